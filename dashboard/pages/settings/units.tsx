/** Light and units: how this browser shows things. */
import { Key } from '../../parts/field.tsx';
import { Section } from '../../parts/section.tsx';
import { type Theme, theme } from '../../parts/theme.ts';
import { health } from '../../state.ts';
import { type Habits, habits } from '../../words/habits.ts';

const themes: readonly { value: Theme; words: string }[] = [
  { value: 'phone', words: 'as this device' },
  { value: 'light', words: 'light' },
  { value: 'dark', words: 'dark' },
];
const questions: readonly {
  legend: string;
  options: readonly { words: string; habit: Partial<Habits> }[];
}[] = [
  {
    legend: 'Temperatures in',
    options: [
      { words: '°C', habit: { degrees: 'C' } },
      { words: '°F', habit: { degrees: 'F' } },
    ],
  },
  {
    legend: 'Areas in',
    options: [
      { words: 'm²', habit: { area: 'm2' } },
      { words: 'ft²', habit: { area: 'ft2' } },
    ],
  },
  {
    legend: 'Days are written',
    options: [
      { words: 'day, month', habit: { dayFirst: true } },
      { words: 'month, day', habit: { dayFirst: false } },
    ],
  },
  {
    legend: 'Weeks begin on',
    options: [
      { words: 'Monday', habit: { weekStart: 1 } },
      { words: 'Sunday', habit: { weekStart: 7 } },
    ],
  },
];

const holds = (habit: Partial<Habits>): boolean =>
  Object.entries(habit).every(([name, value]) => habits.value[name as keyof Habits] === value);

export function Units() {
  return (
    <Section title="Light and units">
      <fieldset class="keys">
        <legend>The page is</legend>
        {themes.map(({ value, words }) => (
          <Key
            key={value}
            pressed={theme.value === value}
            onPress={() => {
              theme.value = value;
            }}
          >
            {words}
          </Key>
        ))}
      </fieldset>
      {questions.map(({ legend, options }) => (
        <fieldset class="keys" key={legend}>
          <legend>{legend}</legend>
          {options.map(({ words, habit }) => (
            <Key
              key={words}
              pressed={holds(habit)}
              onPress={() => {
                habits.value = { ...habits.value, ...habit };
              }}
            >
              {words}
            </Key>
          ))}
        </fieldset>
      ))}
      <p class="note">
        Until you choose, units follow the language of this browser; your choice holds in this browser only.
        Numbers of animals are always per m², degree-days always in °C. Version{' '}
        {health.value.data?.version ?? 'unknown'}.
      </p>
    </Section>
  );
}
