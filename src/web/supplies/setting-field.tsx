import { useEffect, useId, useState } from 'preact/hooks';

type SettingFieldProps = {
  readonly label: string;
  readonly hint: string;
  readonly value: string;
  /** Takes what was typed once it is whole; a sentence where it is not understood. */
  readonly take: (text: string) => string | null;
};

/** What stands in the field while somebody types, or because it is not understood. */
type InField = { readonly text: string; readonly fault: string | null };

/** Milliseconds without a key after which somebody has typed to the end. */
const pauseMs = 500;

/** A setting that is typed: taken after a pause, by Enter, or by leaving it; only then is it said what is not understood. */
export function SettingField({ label, hint, value, take }: SettingFieldProps) {
  const id = useId();
  const [inField, hold] = useState<InField | null>(null);
  const { text = value, fault = null } = inField ?? {};
  useEffect(() => {
    if (inField?.fault !== null) return;
    const timer = setTimeout(() => take(text.trim()), pauseMs);
    return () => clearTimeout(timer);
  }, [inField]);
  return (
    <div class="setting">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        placeholder={hint}
        value={text}
        aria-invalid={fault !== null}
        aria-describedby={`${id}-fault`}
        onInput={({ currentTarget }) => hold({ text: currentTarget.value, fault: null })}
        onChange={({ currentTarget }) => {
          const remedy = take(currentTarget.value.trim());
          hold(remedy === null ? null : { text: currentTarget.value, fault: remedy });
        }}
        onBlur={() => hold((one) => (one?.fault === null ? null : one))}
      />
      <p id={`${id}-fault`} class="care minor" aria-live="polite">
        {fault}
      </p>
    </div>
  );
}
