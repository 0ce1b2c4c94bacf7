import { spawn } from 'node:child_process';

/** What a Node process prints, run to its end; what it says on standard error is shown. */
export function outputOf(parameters: readonly string[]): Promise<string> {
  const child = spawn(process.execPath, [...parameters], { stdio: ['ignore', 'pipe', 'inherit'] });
  let text = '';
  child.stdout.setEncoding('utf8').on('data', (more: string) => {
    text += more;
  });
  return new Promise((settle, fail) => {
    child.on('error', fail).on('close', () => {
      settle(text);
    });
  });
}
