/** Every sentence there can be, over all pests, their enemies and chances: its length, its verb, its words. */
import { describe, expect, it } from 'vitest';
import { releaseOption } from '../../services/model/planning/candidates.ts';
import { daysToKeep } from '../../services/model/planning/daysToKeep.ts';
import { type Choice, decide, type PestDecision } from '../../services/model/planning/decide.ts';
import { parcelToOrder } from '../../services/model/planning/parcel.ts';
import { cautionsFor, reasonsFor, whatWouldChange } from '../../services/model/planning/reasons.ts';
import { sentenceFor } from '../../services/model/planning/sentence.ts';
import { huntersOf } from '../../services/model/population/world.ts';
import { type EnemyId, pestIds, type Season } from '../../services/model/season.ts';
import { asOfMs, count, fixedFit, invented } from './season.ts';

const forbidden = /risk level|alert|infestation|outbreak|kill|optimal|model|posterior|confidence|failed/i;
const chances = [0.01, 0.05, 0.2, 0.5, 0.8, 0.95, 0.99];
const choices: readonly (readonly [Choice, readonly PestDecision['because'][]])[] = [
  ['order', ['rule']],
  ['top-up', ['rule']],
  ['wash', ['rule', 'no-enemy']],
  ['release', ['parcel-arrived']],
  ['wait', ['parcel-ordered', 'no-recent-count', 'too-few', 'seen-once', 'unlikely', 'little-known']],
  ['leave', ['not-seen', 'parcel-at-work', 'late-in-season', 'wasps-at-work', 'season-over', 'outdoors']],
];
const blocked = ['warmth', 'day-length', 'egg-humidity', 'ants', 'prey'];

/** A large house, counted and looked at, so that every number is long. */
const house = (pest: (typeof pestIds)[number], whitefly: number): Season =>
  invented(
    {
      trapCounts: ['2026-05-06', '2026-05-13'].map((day) => ({
        id: day,
        trapId: 'door',
        time: `${day}T08:00:00Z`,
        exposureDays: 7,
        counts: { whitefly, aphid: whitefly, thrips: whitefly, 'small-wasp': 5 },
      })),
      leafChecks: [
        {
          id: 'l',
          time: '2026-05-12T09:00:00Z',
          leaves: 10,
          seen: [
            { kind: 'whitefly-scale', total: 1234 },
            { kind: 'black-scale', total: 1111 },
            { kind: 'aphid', total: 1234 },
            { kind: 'mummy', total: 1 },
            { kind: 'spider-mite', infestedLeaves: 8, total: 1234 },
            { kind: 'mealybug', infestedLeaves: 1 },
          ],
        },
      ],
    },
    { areaM2: 10_000, pests: [pest], limits: {} },
  );

function decisions(): { season: Season; decision: PestDecision }[] {
  return pestIds.flatMap((pest) =>
    huntersOf(pest).flatMap(({ id }) =>
      chances.flatMap((left) => {
        const season = house(pest, left === 0.5 ? 0 : 1234);
        const fit = fixedFit({ left }, undefined, pest);
        const { evidence, ahead, candidates } = decide(season, fit, fit.forecast.pests[0]!, asOfMs);
        const base = { pest, evidence, ahead, candidates, conditions: [] };
        const enemy = id as EnemyId;
        const facts = { pest, evidence, asOfMs };
        const chosen = releaseOption(season, fit, facts, parcelToOrder(season, enemy, asOfMs));
        const order = { id: 'o', enemy, number: 1000, orderedAt: '2026-05-01T08:00:00Z' };
        const released = { ...order, form: 'x', time: '2026-05-01T08:00:00Z', aliveShare: 1 };
        return choices.flatMap(([choice, reasons]) =>
          reasons.flatMap((because): { season: Season; decision: PestDecision }[] => {
            const decision = { ...base, choice, because, order, released };
            if (because !== 'no-enemy') {
              const weighed = { ...decision, chosen, conditions: chosen.conditions };
              const buys = choice === 'order' || choice === 'top-up';
              return [
                { season, decision: weighed },
                ...(buys ? [{ season, decision: { ...weighed, washFirst: true } }] : []),
              ];
            }
            return blocked.map((rule) => ({
              season,
              decision: {
                ...decision,
                conditions: [{ rule, verdict: 'fails', text: 'No.', source: 'none' }],
              },
            }));
          }),
        );
      }),
    ),
  );
}

describe('all sentences', () => {
  const all = decisions();
  const sentences = all.map(({ season, decision }) => sentenceFor(season, decision, asOfMs));

  it('have at most 30 words and start with their verb', () => {
    expect(sentences.length).toBeGreaterThan(500);
    for (const { text, verb } of sentences) {
      expect(text.split(/\s+/).length, text).toBeLessThanOrEqual(30);
      expect(text.startsWith(`${verb} `) || text.startsWith(`${verb}:`), text).toBe(true);
    }
  });

  it('are said in our words, with everything beside them', () => {
    for (const [i, { season, decision }] of all.entries()) {
      const texts = [
        sentences[i]!.text,
        ...reasonsFor(season, decision, asOfMs),
        ...whatWouldChange(season, decision, asOfMs),
        ...daysToKeep(season, decision, asOfMs).map((day) => `${day.verb} ${day.text}`),
        ...cautionsFor(decision),
        ...decision.conditions.map((condition) => condition.text),
      ];
      for (const text of texts) {
        expect(text).not.toMatch(forbidden);
        expect(text).not.toMatch(/undefined|NaN|null| {2}|\.\.|\b1 [a-z]+ aphids\b/);
        expect(text).not.toMatch(/\b(Encarsia|Aphidius|whitefly) (hunt|need|pass|are)\b/);
      }
    }
  });
});

/** Two rounds of a small house, as they come; of mites leaves with any of ten. */
const rounds = [
  [0, 0],
  [0, 3],
  [2, 4],
  [5, 9],
] as const;

/** Read through one by one on 2026-11-28; a change of any is to be read again. */
it('a set of sentences is as it was read', async () => {
  const texts = (['trialeurodes-vaporariorum', 'aphis-gossypii', 'tetranychus-urticae'] as const).flatMap(
    (pest) =>
      rounds.flatMap((counted) =>
        [0.2, 0.5, 0.95].map((left) => {
          const days = ['2026-05-06', '2026-05-13'].map((day, i) => ({ day, number: counted[i]! }));
          const season = invented(
            {
              trapCounts: days.map(({ day, number }) => ({
                id: day,
                trapId: 'door',
                time: `${day}T08:00:00Z`,
                exposureDays: 7,
                counts: { whitefly: 4 * number, aphid: number },
              })),
              leafChecks: days.map(({ day, number }) => ({
                id: day,
                time: `${day}T08:10:00Z`,
                leaves: 10,
                seen: [
                  { kind: 'whitefly-scale', total: number },
                  { kind: 'aphid', total: 3 * number },
                  { kind: 'spider-mite', infestedLeaves: number },
                ],
              })),
            },
            { pests: [pest], limits: {} },
          );
          const fit = fixedFit({ left, released: 0.1 }, undefined, pest);
          const decision = decide(season, fit, fit.forecast.pests[0]!, asOfMs);
          return `${pest}, ${counted.join(' then ')}, ${left}: ${sentenceFor(season, decision, asOfMs).text}`;
        }),
      ),
  );
  await expect(`${texts.join('\n')}\n`).toMatchFileSnapshot('./sentences.txt');
});

it('a wash before the parcel stands in the sentence, the days and the cautions', () => {
  const season = invented();
  const fit = fixedFit({ left: 0.95, released: 0.5, washedThen: 0.1 });
  const decision = decide(season, fit, fit.forecast.pests[0]!, asOfMs);
  expect(decision.washFirst).toBe(true);
  expect(sentenceFor(season, decision, asOfMs).text).toBe(
    'Order 2 cards of Encarsia by Mon 18 May and wash the plants today: whitefly will very probably (more than 9 of 10) pass your limit.',
  );
  expect(daysToKeep(season, decision, asOfMs)[0]).toMatchObject({ day: '2026-05-13', verb: 'Wash' });
  expect(cautionsFor(decision)).toContain('Keep water away from sockets and heaters.');
  expect(decision.candidates.map(({ label }) => label).slice(0, 2)).toEqual([
    'Wash, then 2 cards of Encarsia',
    '2 cards of Encarsia',
  ]);
  expect(decision.chosen?.candidate.passesLimit).toBe(0.1);
  const told = reasonsFor(season, decision, asOfMs).join(' ');
  const [, harm, price, whole] = told.match(
    /With a wash before it about (\d+) EUR, for (\d+) EUR: crop and money together (\d+) EUR/,
  )!;
  expect(Number(harm) + Number(price)).toBe(Number(whole));
  expect(reasonsFor(season, decision, asOfMs).join(' ')).toContain(
    '; with a wash and then 2 cards of Encarsia, 1 of 10.',
  );
});

it('a wash before a parcel on its way is told until it is written down', () => {
  const told = (treatments: object[]) => {
    const orders = [{ id: 'o', enemy: 'encarsia-formosa', number: 120, orderedAt: '2026-05-12T08:00:00Z' }];
    const season = invented({ orders, treatments });
    const fit = fixedFit({ left: 0.95, released: 0.5, washedThen: 0.1 });
    return sentenceFor(season, decide(season, fit, fit.forecast.pests[0]!, asOfMs), asOfMs).text;
  };
  expect(told([])).toBe(
    'Wash the plants today, before the Encarsia comes on Wed 20 May: that leaves fewer whitefly to hold.',
  );
  expect(told([{ id: 'w', kind: 'soap', time: '2026-05-13T08:00:00Z', coveredShare: 0.8 }])).toMatch(
    /^Wait for the Encarsia, due Wed 20 May/,
  );
});

it('a wash alone waits for five days after the last, and for somebody at home', () => {
  const told = (treatments: object[], awayDays: object[] = []) => {
    const season = invented(
      { treatments, trapCounts: [aphids('2026-05-06', 2), aphids('2026-05-13', 9)] },
      { pests: ['aphis-gossypii'], limits: {}, awayDays },
    );
    const fit = fixedFit({ left: 0.95 }, undefined, 'aphis-gossypii');
    const decision = decide(season, fit, fit.forecast.pests[0]!, asOfMs);
    expect(decision.choice).toBe('wash');
    const { text } = sentenceFor(season, decision, asOfMs);
    return [text.slice(0, text.indexOf(':')), daysToKeep(season, decision, asOfMs)[0]!.day];
  };
  const washed = { id: 'w', kind: 'soap', time: '2026-05-11T08:00:00Z', coveredShare: 0.8 };
  expect(told([])).toEqual(['Wash the plants today and again in five days', '2026-05-13']);
  expect(told([washed])).toEqual(['Wash the plants once more on Sat 16 May', '2026-05-16']);
  const away = [{ from: '2026-05-13', to: '2026-05-15' }];
  expect(told([], away)).toEqual(['Wash the plants on Sat 16 May and five days later', '2026-05-16']);
});

const aphids = (day: string, aphid: number) => count(day, 0, { counts: { aphid } });

describe('what was seen', () => {
  const sentence = (season: Season, pest: (typeof pestIds)[number] = 'myzus-persicae') => {
    const fit = fixedFit({ left: 0.5 }, undefined, pest);
    return sentenceFor(season, decide(season, fit, fit.forecast.pests[0]!, asOfMs), asOfMs).text;
  };
  const onLeaves = (total: number) => [
    { id: 'l', time: '2026-05-12T09:00:00Z', leaves: 10, seen: [{ kind: 'aphid', total }] },
  ];

  it('speaks of leaves when the pest was seen on leaves only', () => {
    const place = { pests: ['myzus-persicae'], limits: {} };
    expect(sentence(invented({ trapCounts: [], leafChecks: onLeaves(3) }, place))).toBe(
      'Count again on Tue 19 May: 3 peach aphids on leaves cannot tell yet whether they grow.',
    );
    expect(sentence(invented({ trapCounts: [], leafChecks: onLeaves(1) }, place))).toBe(
      'Count again on Tue 19 May: 1 peach aphid on leaves cannot tell yet whether it grows.',
    );
  });

  it('never says that none on the last trap cannot tell', () => {
    const trapCounts = [3, 0].map((whitefly, i) => ({
      id: `c${i}`,
      trapId: 'door',
      time: `2026-05-${i === 0 ? '01' : '13'}T08:00:00Z`,
      exposureDays: 7,
      counts: { whitefly },
    }));
    expect(sentence(invented({ trapCounts }), 'trialeurodes-vaporariorum')).toBe(
      'Count again on Wed 20 May: so few whitefly cannot tell yet whether they grow.',
    );
  });
});
