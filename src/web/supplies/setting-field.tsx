import { useId, useState } from 'preact/hooks';

type SettingFieldProps = {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  /** Takes what was typed once it is whole; a sentence where it is not understood. */
  readonly take: (text: string) => string | null;
};

/** A setting that is typed: taken by Enter, or by leaving it. */
export function SettingField({ label, hint, value, take }: SettingFieldProps) {
  const id = useId();
  const [fault, blame] = useState<string | null>(null);
  return (
    <div class="setting">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        placeholder={hint}
        value={value}
        aria-invalid={fault !== null}
        aria-describedby={`${id}-fault`}
        onChange={({ currentTarget }) => blame(take(currentTarget.value.trim()))}
      />
      <p id={`${id}-fault`} class="care minor" aria-live="polite">
        {fault}
      </p>
    </div>
  );
}
