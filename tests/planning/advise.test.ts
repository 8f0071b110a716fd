import { describe, expect, it } from 'vitest';
import { adviceSchema, adviseFrom, type Fit, type Season } from '../../services/model/index.ts';
import { asOf, count, fixedFit, invented } from './season.ts';

const words = (text: string) => text.split(/\s+/).length;
const advice = (season: Season, fit = fixedFit({ left: 0.8, released: 0.3 })) => {
  const answer = adviseFrom(season, fit, asOf);
  adviceSchema.parse(answer);
  expect(words(answer.sentence), answer.sentence).toBeLessThanOrEqual(30);
  expect(answer.sentence.startsWith(answer.verb)).toBe(true);
  return answer;
};
const release = (time: string) => ({
  id: 'r',
  enemy: 'amblyseius-swirskii',
  form: 'mixed stages in sachets',
  number: 1200,
  time,
});
const onlyMites = {
  supplier: { ...invented().place.supplier, pricePerAnimal: { 'amblyseius-swirskii': 0.02 } },
};

describe('the decision', () => {
  it('orders when the rule fires and the limit will probably be passed', () => {
    const answer = advice(invented({}, onlyMites));
    expect(answer.decision).toBe('order');
    expect(answer.plan).toMatchObject({
      enemy: 'amblyseius-swirskii',
      number: 1200,
      orderBy: '2026-05-18',
      arrivesOn: '2026-05-20',
      price: 30,
      currency: 'EUR',
    });
    expect(answer.chanceIfLeft).toBe(0.8);
    expect(answer.chanceWithPlan).toBe(0.3);
    expect(answer.daysToKeep.map((d) => `${d.day} ${d.verb}`)).toEqual([
      '2026-05-18 Order',
      '2026-05-20 Hang',
      '2026-05-20 Count',
      '2026-06-10 Look',
      '2026-06-17 Top up',
    ]);
  });

  it('chooses the cheaper enemy when both hold the pest alike', () => {
    // 12 m2: 6 Encarsia a m2 = 72, two cards of 60 at 0.15 = 18 + 6; 100 mites a m2 = 1200 at 0.02 = 24 + 6
    expect(advice(invented()).plan?.enemy).toBe('encarsia-formosa');
  });

  it('buys nothing while passing the limit is unlikely', () => {
    expect(advice(invented(), fixedFit({ left: 0.2 })).decision).toBe('wait');
  });

  it('leaves it while a parcel of the last four weeks is at work', () => {
    expect(advice(invented({ releases: [release('2026-05-01T12:00:00Z')] })).decision).toBe('leave');
  });

  it('tops up when an earlier parcel did not hold', () => {
    expect(advice(invented({ releases: [release('2026-04-10T12:00:00Z')] }, onlyMites)).decision).toBe(
      'top-up',
    );
  });

  it('asks for a count after three weeks without one', () => {
    const answer = advice(invented({ trapCounts: [count('2026-04-20', 14)] }));
    expect(answer.decision).toBe('wait');
    expect(answer.verb).toBe('Count');
    expect(answer.nextCountOn).toBe('2026-05-13');
  });

  it('moves the parcel behind the waiting time of a spray', () => {
    const treatments = [{ id: 't', kind: 'neem', time: '2026-05-11T08:00:00Z' }];
    const answer = advice(invented({ treatments }, onlyMites));
    expect(answer.plan?.windowFrom).toBe('2026-05-27');
    expect(answer.conditions.find((c) => c.rule === 'residue')?.verdict).toBe('holds');
  });

  it('washes and says why when the house is too cold for any enemy', () => {
    const answer = advice(invented(), fixedFit({ left: 0.8 }, { minC: 6, maxC: 12 }));
    expect(answer.decision).toBe('wash');
    expect(answer.cautions).toContain('Keep water away from sockets and heaters.');
  });

  it('advises no bought enemy outdoors', () => {
    expect(advice(invented({}, { kind: 'outdoors', limits: {} })).decision).toBe('leave');
  });

  it('sets the parcel out once it has come, and waits while it is on its way', () => {
    const order = {
      id: 'o',
      enemy: 'amblyseius-swirskii',
      number: 1200,
      orderedAt: '2026-05-11T08:00:00Z',
      expectedOn: '2026-05-13',
    };
    expect(advice(invented({ orders: [order] })).decision).toBe('wait');
    expect(advice(invented({ orders: [{ ...order, arrivedAt: '2026-05-13T08:00:00Z' }] })).decision).toBe(
      'release',
    );
  });

  it('asks for no second parcel while one is on its way, and judges it on the day it comes', () => {
    const order = {
      id: 'o',
      enemy: 'amblyseius-swirskii',
      number: 600,
      orderedAt: '2026-05-11T08:00:00Z',
      expectedOn: '2026-05-15',
      price: 18,
    };
    const treatments = [{ id: 't', kind: 'neem', time: '2026-05-11T09:00:00Z' }];
    const due = advice(invented({ orders: [order], treatments }));
    expect(due.plan).toMatchObject({ number: 600, windowFrom: '2026-05-15', price: 18, currency: 'EUR' });
    expect(due.plan?.orderBy).toBeUndefined();
    expect(due.conditions.find((c) => c.rule === 'residue')?.verdict).toBe('fails');
    const late = advice(invented({ orders: [{ ...order, expectedOn: '2026-05-12' }] }));
    expect(late.sentence).toBe(
      'Wait for the swirskii mites, due since Tue 12 May: ask the supplier where they are.',
    );
    const arrived = advice(invented({ orders: [{ ...order, arrivedAt: '2026-05-13T08:00:00Z' }] }));
    expect(arrived.plan).toMatchObject({ number: 600, windowFrom: '2026-05-13' });
  });

  it('forgets an order that never came, and a parcel never set out', () => {
    const order = {
      id: 'o',
      enemy: 'amblyseius-swirskii',
      number: 600,
      orderedAt: '2026-04-01T08:00:00Z',
      expectedOn: '2026-04-20',
    };
    // Due 23 days ago: still awaited; due 33 days ago: not.
    expect(advice(invented({ orders: [order] })).decision).toBe('wait');
    expect(advice(invented({ orders: [{ ...order, expectedOn: '2026-04-10' }] })).decision).toBe('order');
    const spoilt = { ...order, arrivedAt: '2026-05-05T08:00:00Z' };
    expect(advice(invented({ orders: [spoilt] })).decision).toBe('order');
  });

  it('sees nothing that happened later', () => {
    const order = {
      id: 'o',
      enemy: 'amblyseius-swirskii',
      number: 600,
      orderedAt: '2026-05-11T08:00:00Z',
    };
    const now = invented({ orders: [order] });
    const later = invented({
      orders: [
        { ...order, arrivedAt: '2026-05-20T08:00:00Z' },
        { ...order, id: 'p', orderedAt: '2026-05-21T08:00:00Z' },
      ],
      releases: [release('2026-05-21T12:00:00Z')],
      trapCounts: [...now.trapCounts, count('2026-05-27', 400)],
      traps: [{ ...now.traps[0], takenDownAt: '2026-05-21T12:00:00Z' }],
      sightings: [{ id: 's', time: '2026-05-21T12:00:00Z', what: 'ants' }],
      treatments: [{ id: 't', kind: 'neem', time: '2026-05-21T12:00:00Z' }],
    });
    expect(advice(later)).toEqual(advice(now));
  });

  it('orders, not tops up, an enemy that was not released this season', () => {
    const others = [{ ...release('2026-04-10T12:00:00Z'), enemy: 'encarsia-formosa', form: 'pupa on card' }];
    expect(advice(invented({ releases: others }, onlyMites)).decision).toBe('order');
    expect(advice(invented({ releases: [release('2025-09-01T12:00:00Z')] }, onlyMites)).decision).toBe(
      'order',
    );
  });

  it('a parcel against another pest is not at work on this one', () => {
    const lacewings = { ...release('2026-05-10T12:00:00Z'), enemy: 'chrysoperla-carnea', form: 'larvae' };
    expect(advice(invented({ releases: [lacewings] }, onlyMites)).decision).toBe('order');
    // Nor is it hidden from it by a supplier who does not sell what was released.
    const encarsia = { ...release('2026-05-10T12:00:00Z'), enemy: 'encarsia-formosa', form: 'pupa on card' };
    const answer = advice(invented({ releases: [encarsia, lacewings] }, onlyMites));
    expect(answer.sentence).toMatch(/^Leave it: the Encarsia needs time to show; whitefly /);
  });

  it('leaves it while the house rests, and asks for no count then', () => {
    const over = advice(invented({ trapCounts: [count('2026-04-01', 9)] }, { seasonEnd: '04-30' }));
    expect(over.decision).toBe('leave');
    expect(over.sentence).toMatch(/^Leave it: the season is over; /);
  });

  it('advises a southern house in its spring, with half a year left', () => {
    const south = { latitudeDeg: -37, timeZone: 'Pacific/Auckland', seasonEnd: '04-30' };
    const spring = '2026-10-21T09:00:00Z';
    const season = invented(
      { trapCounts: [count('2026-10-07', 4), count('2026-10-14', 9), count('2026-10-21', 14)] },
      { ...south, ...onlyMites },
    );
    expect(adviseFrom(season, fixedFit({ left: 0.8, released: 0.3 }), spring).decision).toBe('order');
  });

  it('washes for the reason that holds: ants, or nobody sells an enemy', () => {
    const pest = 'myzus-persicae';
    const place = { pests: [pest], limits: {} };
    const aphids = ['2026-05-06', '2026-05-13'].map((day) => count(day, 0, { counts: { aphid: 9 } }));
    const fit = fixedFit({ left: 0.8, released: 0.3 }, undefined, pest);
    const sightings = [{ id: 's', time: '2026-05-12T08:00:00Z', what: 'ants' }];
    const prices = {
      supplier: { ...invented().place.supplier, pricePerAnimal: { 'aphidius-colemani': 0.1 } },
    };
    expect(
      advice(invented({ trapCounts: aphids, sightings }, { ...place, ...prices }), fit).sentence,
    ).toContain('ants would drive friends away');
    expect(advice(invented({ trapCounts: aphids }, { ...place, ...onlyMites }), fit).sentence).toContain(
      'your supplier lists no friend against them',
    );
  });

  it('puts a tube out, in words that fit', () => {
    const pest = 'myzus-persicae';
    const prices = {
      supplier: { ...invented().place.supplier, pricePerAnimal: { 'adalia-bipunctata': 0.1 } },
    };
    const aphids = ['2026-05-06', '2026-05-13'].map((day) => count(day, 0, { counts: { aphid: 9 } }));
    const season = invented({ trapCounts: aphids }, { pests: [pest], limits: {}, ...prices });
    expect(advice(season, fixedFit({ left: 0.8, released: 0.3 }, undefined, pest)).sentence).toContain(
      'Order 3 tubes of ladybirds by Mon 18 May and put them out Wed 20 May',
    );
  });

  it('says that dates are assumed when no supplier is entered', () => {
    const answer = advice(invented({}, { supplier: undefined }));
    expect(answer.plan?.orderBy).toBeDefined();
    expect(answer.doubts.map((d) => d.code)).toContain('supplier-unknown');
  });

  it('asks which pests to follow when none is chosen', () => {
    const fit = fixedFit({ left: 0.1 });
    const answer = advice(invented({}, { pests: [], limits: {} }), {
      ...fit,
      forecast: { ...fit.forecast, pests: [] },
    });
    expect(answer.verb).toBe('Choose');
  });
});

describe('one piece and many', () => {
  it('hangs it, not them', () => {
    // On a single m2 the fee alone would cost more than the parcel spares.
    const supplier = { ...onlyMites.supplier, parcelFee: 0 };
    const small = invented({}, { areaM2: 1, supplier });
    const over = { weeksOver: 8, damage: 0.8 };
    const held = { weeksOver: 0, damage: 0 };
    const fit: Fit = {
      ...fixedFit({ left: 0.8, released: 0.3 }),
      overLimit: (_, { releases = [] }) => [releases.length > 0 ? held : over],
    };
    expect(advice(small, fit).sentence).toContain(
      'Order 1 sachet of swirskii mites by Mon 18 May and hang it Wed 20 May',
    );
  });
});

describe('golden sentences, reviewed by reading them', () => {
  it.each([
    [
      0.8,
      'Order 12 sachets of swirskii mites by Mon 18 May and hang them Wed 20 May: whitefly will probably (8 of 10) pass your limit around 3 June.',
    ],
    [
      0.5,
      'Order 12 sachets of swirskii mites by Mon 18 May and hang them Wed 20 May: whitefly may or may not (5 of 10) pass your limit around 3 June.',
    ],
    [
      0.95,
      'Order 12 sachets of swirskii mites by Mon 18 May and hang them Wed 20 May: whitefly will very probably (more than 9 of 10) pass your limit.',
    ],
    [
      0.2,
      'Count again on Wed 20 May: whitefly is unlikely (2 of 10) to pass your limit, so nothing need be bought yet.',
    ],
  ])('at a chance of %s', (left, sentence) => {
    expect(advice(invented({}, onlyMites), fixedFit({ left, released: 0.1 })).sentence).toBe(sentence);
  });

  it.each([
    [30, 'whitefly will probably (8 of 10) pass your limit around 3 June.'],
    [31, 'whitefly is over your limit.'],
  ])('with %s counted last and a limit of 30', (last, why) => {
    const trapCounts = [count('2026-05-06', 9), count('2026-05-13', last)];
    const { sentence } = advice(invented({ trapCounts }, onlyMites), fixedFit({ left: 0.8, released: 0.1 }));
    expect(sentence).toBe(
      `Order 12 sachets of swirskii mites by Mon 18 May and hang them Wed 20 May: ${why}`,
    );
  });
});

it('tells the weeks over the limit of the whole season, as the ways do', () => {
  // Of 100 possible seasons 80 are eight weeks over it if left: 6.4; with the parcel, a week from now, 26: 2.1.
  expect(advice(invented({}, onlyMites), fixedFit({ left: 0.8, released: 0.25 })).reasons).toContain(
    'Of the weeks left this season about 6 are over your limit if left, about 2 with it.',
  );
});

it('tells every sum in the currency of the supplier, and in EUR until one is entered', () => {
  const sums = (supplier: object | undefined) =>
    advice(invented({}, { supplier }), fixedFit({ left: 0.8, released: 0.3 }))
      .reasons.join(' ')
      .match(/\d+ [A-Z]{3}\b/g)
      ?.map((sum) => sum.slice(-3));
  expect(sums({ ...onlyMites.supplier, currency: 'GBP' })).toEqual(['GBP', 'GBP', 'GBP']);
  expect(sums(undefined)).toEqual(['EUR', 'EUR', 'EUR']);
});

it('tells catches as the page draws them: a trap and week, all traps of a day together', () => {
  const trapCounts = [
    count('2026-05-06', 9),
    count('2026-05-13', 4, { countedFraction: 0.5 }),
    count('2026-05-13', 4, { id: 'mid', trapId: 'mid' }),
  ];
  const traps = ['door', 'mid'].map((id) => ({ id, name: id, hungAt: '2026-04-01T08:00:00Z' }));
  // (4 + 4) insects on 0.5 + 1 trap-weeks
  expect(advice(invented({ traps, trapCounts })).reasons[0]).toBe(
    'The last counts were 9 then 5 whitefly a trap and week.',
  );
});

it('keeps no days while the house rests for the winter', () => {
  const winter = '2026-11-20T09:00:00Z';
  const fit = fixedFit({ left: 0.1 });
  expect(adviseFrom(invented(), fit, winter).daysToKeep).toEqual([]);
});

describe('what a newcomer stumbled over', () => {
  it('a pest over its limit speaks before a harmless one that waits for a count', () => {
    const both = invented({}, { pests: ['trialeurodes-vaporariorum', 'aphis-gossypii'] });
    const fit = fixedFit({ left: 0.8 });
    const whitefly = fit.forecast.pests[0]!;
    const aphids = {
      ...whitefly,
      pest: 'aphis-gossypii' as const,
      counted: { unit: 'trap-week', kind: 'aphid', limit: 30 } as const,
      passesLimit: { ...whitefly.passesLimit, probability: 0.05 },
    };
    const parcel = { releases: [release('2026-05-01T12:00:00Z')] };
    const answer = advice(
      { ...both, ...invented(parcel), place: both.place },
      { ...fit, forecast: { ...fit.forecast, pests: [aphids, whitefly] } },
    );
    expect(answer.pest).toBe('trialeurodes-vaporariorum');
  });

  it('washes when the season is too short for friends and the limit will probably be passed', () => {
    const answer = advice(invented({}, { seasonEnd: '06-20' }));
    expect(answer.decision).toBe('wash');
    expect(answer.sentence).toContain('the season ends before a release would pay');
    expect(advice(invented({}, { seasonEnd: '06-20' }), fixedFit({ left: 0.5 })).decision).toBe('leave');
  });

  it('keeps the day of hanging and of looking after the order', () => {
    const order = {
      id: 'o',
      enemy: 'amblyseius-swirskii',
      number: 1200,
      orderedAt: '2026-05-12T08:00:00Z',
      expectedOn: '2026-05-20',
    };
    const kept = advice(invented({ orders: [order] })).daysToKeep.map(({ day, verb }) => `${day} ${verb}`);
    expect(kept).toEqual(['2026-05-20 Hang', '2026-05-20 Count', '2026-06-10 Look', '2026-06-17 Top up']);
  });

  it('says that a parcel alone may not be enough, and which friends stand without a price', () => {
    const supplier = { ...onlyMites.supplier, pricePerAnimal: { 'amblyseius-swirskii': 0.005 } };
    const answer = advice(invented({}, { supplier }), fixedFit({ left: 0.9, released: 0.7 }));
    expect(answer.reasons.some((reason) => reason.startsWith('The parcel alone may not be enough'))).toBe(
      true,
    );
    expect(answer.wouldChange.some((line) => line.startsWith('No price is entered for Encarsia'))).toBe(true);
  });

  it('counts again today when the week is over', () => {
    const answer = advice(invented({ trapCounts: [count('2026-05-06', 6)] }));
    expect(answer.sentence).toMatch(/^Count again today: /);
  });
});
