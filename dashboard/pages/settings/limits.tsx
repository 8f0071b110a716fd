/** The person's own limits: how many on a trap in a week are still fine. */
import { useState } from 'preact/hooks';
import type { PestId, Place } from '../../../services/model/index.ts';
import { Field, issueFor, Key, numberFrom, numberOdd, refusedHere } from '../../parts/field.tsx';
import { Form } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { capital, pestNames } from '../../words/names.ts';
import { changePlace } from './places.tsx';

/** The limit in use where none is typed in, as the forecast has it. */
const usualLimit = 10;

/** Starting points; common practice, no source: the person knows the damage they can bear. */
const leanings: readonly { words: string; limit: number }[] = [
  { words: 'some is fine', limit: 30 },
  { words: 'a little', limit: 15 },
  { words: 'hardly any', limit: 5 },
];

export function Limits({ shown }: { shown: Place }) {
  const [texts, setTexts] = useState<Partial<Record<PestId, string>>>(
    Object.fromEntries(Object.entries(shown.limits).map(([pest, limit]) => [pest, String(limit)])),
  );
  const set = (pest: PestId, text: string) => setTexts((old) => ({ ...old, [pest]: text }));
  const send = async () => {
    const expected = 'type a number a trap and week, or leave it empty';
    const refused = refusedHere(
      ...shown.pests.map((pest) => numberOdd(`limits.${pest}`, texts[pest] ?? '', expected)),
    );
    if (refused) return { ok: false as const, refused };
    const limits: Place['limits'] = {};
    for (const pest of shown.pests) {
      const limit = numberFrom(texts[pest] ?? '');
      if (limit !== undefined) limits[pest] = limit;
    }
    return changePlace({ ...shown, limits }, 'your limits. The forecast is worked out again.');
  };
  return (
    <Section title="Limits">
      <p class="note">How many on one trap in a week are still fine with you?</p>
      {shown.pests.length === 0 && <p>Choose the pests you have had first, under Places.</p>}
      {shown.pests.length > 0 && (
        <Form onSend={send} button="Keep the limits">
          {(refused) =>
            shown.pests.map((pest) => (
              <div key={pest}>
                <Field
                  label={capital(pestNames[pest])}
                  unit="a trap in a week"
                  inputMode="numeric"
                  value={texts[pest] ?? ''}
                  onText={(text) => set(pest, text)}
                  hint={`empty: ${usualLimit} a trap and week`}
                  issue={issueFor(refused, `limits.${pest}`)}
                />
                <div class="keys">
                  {leanings.map(({ words, limit }) => (
                    <Key
                      key={words}
                      pressed={texts[pest] === String(limit)}
                      label={`${capital(pestNames[pest])}: ${words}, ${limit}`}
                      onPress={() => set(pest, String(limit))}
                    >
                      {words}, {limit}
                    </Key>
                  ))}
                </div>
              </div>
            ))
          }
        </Form>
      )}
    </Section>
  );
}
