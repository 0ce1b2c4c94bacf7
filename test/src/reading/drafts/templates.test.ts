import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';

import { boardTemplate, catalogueTemplate } from '../../../../src/reading/drafts/templates.js';
import { jsonSchema } from '../../../../src/report/json/schemas.js';
import { inputsFromText } from '../../../../src/reading/inputs-from-text.js';

/** The examples without their signs: what somebody who fills them in would have. */
const uncommented = (text: string): string => text.replace(/^( {2})# ((?:- | {2}).*)$/gm, '$1$2');

describe('the files to fill in', () => {
  it('hold no figure of a pedal or supply that could be taken for a real one', () => {
    expect(parse(boardTemplate)).toMatchObject({ pedals: null });
    expect(parse(boardTemplate)).not.toHaveProperty('assume');
    expect(parse(catalogueTemplate)).toMatchObject({ supplies: null, parts: null });
    const read = inputsFromText({ file: 'b.yaml', text: boardTemplate }, { file: 'c.yaml', text: catalogueTemplate });
    const keys = read.kind === 'faulty' ? read.faults.map(({ key }) => key) : [];
    expect(keys).toEqual(['pedals', 'supplies', 'parts']);
  });

  it('are right once their examples are taken for what they show', () => {
    const [board, catalogue] = [uncommented(boardTemplate), uncommented(catalogueTemplate)];
    const read = inputsFromText({ file: 'b.yaml', text: board }, { file: 'c.yaml', text: catalogue });
    expect(read).toMatchObject({ kind: 'read' });
    for (const [kind, text] of [
      ['board', board],
      ['catalogue', catalogue],
    ] as const) {
      const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile({ ...jsonSchema(kind) });
      expect(validate(parse(text)), JSON.stringify(validate.errors)).toBe(true);
    }
  });

  it('name their schemas for editors', () => {
    expect(boardTemplate).toMatch(/^# yaml-language-server: \$schema=board\.schema\.json\n/);
    expect(catalogueTemplate).toMatch(/^# yaml-language-server: \$schema=catalogue\.schema\.json\n/);
  });
});
