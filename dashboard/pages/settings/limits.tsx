/** The person's own limits: how many on a trap in a week, or leaves with any of ten, are still fine. */
import { useState } from 'preact/hooks';
import { type PestId, type Place, usualLimits } from '../../../services/model/index.ts';
import { Field, issueFor, Key, numberFrom, numberOdd, refusedHere } from '../../parts/field.tsx';
import { Form } from '../../parts/form.tsx';
import { Section } from '../../parts/section.tsx';
import { capital, pestNames } from '../../words/names.ts';
import { unitOf } from '../../words/pests.ts';
import { leaningsFor, limitHint } from './limitWords.ts';
import { changePlace } from './places.tsx';

/** By unit, with starting points; common practice, no source: the person knows the damage they can bear. */
const units = {
  'trap-week': {
    unit: 'a trap in a week',
    expected: 'type a number a trap and week, or leave it empty',
    leanings: [
      { words: 'some is fine', limit: 30 },
      { words: 'a little', limit: usualLimits['trap-week'] },
      { words: 'hardly any', limit: 5 },
    ],
  },
  'ten-leaves': {
    unit: 'of ten leaves',
    expected: 'type leaves of ten, fewer than 10, or leave it empty',
    leanings: [
      { words: 'some is fine', limit: 5 },
      { words: 'a little', limit: usualLimits['ten-leaves'] },
      { words: 'hardly any', limit: 1 },
    ],
  },
};

export function Limits({ shown }: { shown: Place }) {
  const [texts, setTexts] = useState<Partial<Record<PestId, string>>>(
    Object.fromEntries(Object.entries(shown.limits).map(([pest, limit]) => [pest, String(limit)])),
  );
  const hint = (pest: PestId) => limitHint(shown.limits[pest], usualLimits[unitOf(shown.kind, pest)]);
  const set = (pest: PestId, text: string) => setTexts((old) => ({ ...old, [pest]: text }));
  const send = async () => {
    const refused = refusedHere(
      ...shown.pests.map((pest) =>
        numberOdd(`limits.${pest}`, texts[pest] ?? '', units[unitOf(shown.kind, pest)].expected),
      ),
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
      <p class="note">How many on one trap in a week, or leaves with any of ten, are still fine with you?</p>
      {shown.pests.length === 0 && <p>Choose the pests you have had first, under Places.</p>}
      {shown.pests.length > 0 && (
        <Form onSend={send} button="Keep the limits">
          {(refused) =>
            shown.pests.map((pest) => (
              <div key={pest}>
                <Field
                  label={capital(pestNames[pest])}
                  unit={units[unitOf(shown.kind, pest)].unit}
                  inputMode="numeric"
                  value={texts[pest] ?? ''}
                  onText={(text) => set(pest, text)}
                  hint={hint(pest)}
                  issue={issueFor(refused, `limits.${pest}`)}
                />
                <div class="keys">
                  {leaningsFor(units[unitOf(shown.kind, pest)].leanings, [
                    texts[pest],
                    shown.limits[pest],
                  ]).map(({ words, limit }) => (
                    <Key
                      key={words}
                      pressed={numberFrom(texts[pest] ?? '') === limit}
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
