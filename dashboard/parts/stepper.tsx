/** A number with minus and plus, for wet thumbs. */
interface StepperProps {
  label: string;
  value: number;
  low: number;
  high: number;
  onChange: (value: number) => void;
}
export function Stepper({ label, value, low, high, onChange }: StepperProps) {
  return (
    <fieldset class="stepper">
      <legend>{label}</legend>
      <button
        type="button"
        class="key"
        aria-label={`fewer ${label}`}
        disabled={value <= low}
        onClick={() => onChange(value - 1)}
      >
        –
      </button>
      <output class="stepper-value">{value}</output>
      <button
        type="button"
        class="key"
        aria-label={`more ${label}`}
        disabled={value >= high}
        onClick={() => onChange(value + 1)}
      >
        +
      </button>
    </fieldset>
  );
}
