import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ReleaseFollowUp, Settlement } from '../../services/model/index.ts';
import { updateWarnings } from '../../services/warnings/warnings.ts';
import { dates, dayMs, hourMs, openHouse, pestAhead, placeId, planFor, wednesdayMs } from './house.ts';

let house: ReturnType<typeof openHouse>;
beforeEach(() => {
  house = openHouse();
  house.count('2026-05-13');
});
afterEach(() => house.store.close());

describe('the life of a warning', () => {
  it('is raised once, with its deadline at the supplier’s hour of that local day, its reason and its end', async () => {
    house.toOrder(wednesdayMs);
    expect(await house.open(wednesdayMs)).toEqual(['order-by']);
    expect(await house.open(wednesdayMs + hourMs)).toEqual(['order-by']);
    const warning = house.one('order-by');
    // Monday 18 May 2026, noon in London summer time.
    expect(new Date(warning?.deadlineMs ?? 0).toISOString()).toBe('2026-05-18T11:00:00.000Z');
    expect(warning).toMatchObject({
      raisedAtMs: wednesdayMs,
      urgentFromMs: Date.parse('2026-05-14T11:00:00Z'),
      reason: 'The last count was 3 whitefly a trap and week.',
      ends: 'Ends when the order is entered, or the advice changes.',
    });
    expect(warning?.text).toContain('Mon 18 May');
  });

  it('is withdrawn when the advice changes, saying the new sentence, and raised again when it comes back', async () => {
    house.toOrder(wednesdayMs);
    await house.open(wednesdayMs);
    house.issue(wednesdayMs + dayMs);
    expect(await house.open(wednesdayMs + dayMs)).toEqual([]);
    expect(house.one('order-by')).toMatchObject({
      state: 'withdrawn',
      ended: 'No order is needed now. Leave it: Encarsia is at work.',
    });
    house.toOrder(wednesdayMs + 2 * dayMs);
    expect(await house.open(wednesdayMs + 2 * dayMs)).toEqual(['order-by']);
    expect(house.one('order-by')).toMatchObject({ state: 'open', raisedAtMs: wednesdayMs + 2 * dayMs });
    expect(house.one('order-by')).not.toHaveProperty('ended');
  });

  it('keeps quiet while put off, wakes afterwards, and stays closed as long as its reason lasts', async () => {
    house.toOrder(wednesdayMs);
    await house.open(wednesdayMs);
    const raised = house.one('order-by');
    if (!raised) throw new Error('nothing was raised');
    house.store.warnings.save({ ...raised, state: 'put-off', putOffUntilMs: wednesdayMs + dayMs });
    expect(await house.open(wednesdayMs + hourMs)).toEqual([]);
    expect(await house.open(wednesdayMs + dayMs)).toEqual(['order-by']);
    house.store.warnings.save({ ...raised, state: 'closed' });
    expect(await house.open(wednesdayMs + dayMs + hourMs)).toEqual([]);
    house.issue(wednesdayMs + 2 * dayMs);
    await house.open(wednesdayMs + 2 * dayMs);
    expect(house.one('order-by')?.state).toBe('done');
  });

  it('has nothing to say of a place that is unknown or has no forecast', async () => {
    expect(await house.open(wednesdayMs)).toEqual([]);
    expect(await updateWarnings(house.store, 'nowhere', wednesdayMs)).toEqual([]);
  });
});

describe('the rules', () => {
  it('order-by: done when the order is entered; a moved day takes the place of the old one', async () => {
    house.toOrder(wednesdayMs);
    await house.open(wednesdayMs);
    house.toOrder(wednesdayMs + dayMs, { orderBy: '2026-05-25' });
    expect(await house.open(wednesdayMs + dayMs)).toEqual(['order-by']);
    expect(house.store.warnings.list(placeId).map(({ state, ended }) => ({ state, ended }))).toEqual([
      { state: 'withdrawn', ended: 'The day moved to Mon 25 May.' },
      { state: 'open', ended: undefined },
    ]);
    house.order({ orderedAt: '2026-05-14T10:00:00Z' });
    house.issue(wednesdayMs + 2 * dayMs);
    expect(await house.open(wednesdayMs + 2 * dayMs)).toEqual([]);
    expect(house.store.warnings.list(placeId).at(-1)).toMatchObject({
      state: 'done',
      ended: 'It was ordered.',
    });
  });

  it('order-by: of a parcel that gives way to another it does not say that none is needed', async () => {
    house.toOrder(wednesdayMs);
    await house.open(wednesdayMs);
    const sentence = 'Order 3 sachets of swirskii mites by Tue 19 May.';
    const plan = planFor('amblyseius-swirskii', { orderBy: '2026-05-19' });
    house.issue(wednesdayMs + dayMs, {
      advice: {
        decision: 'order',
        sentence,
        plan,
        toOrder: [{ pest: 'trialeurodes-vaporariorum', ...plan }],
      },
    });
    await house.open(wednesdayMs + dayMs);
    expect(house.one('order-by')).toMatchObject({
      state: 'withdrawn',
      ended: `This parcel is not wanted now. ${sentence}`,
    });
  });

  it('order-by: names a second parcel, for a pest the sentence does not speak of', async () => {
    const sachets = {
      pest: 'frankliniella-occidentalis' as const,
      enemy: 'neoseiulus-cucumeris' as const,
      form: 'sachet',
      number: 1000,
      perM2: 80,
      orderBy: '2026-05-18',
      windowFrom: '2026-05-20',
      windowTo: '2026-05-22',
      lookOn: '2026-06-03',
    };
    const wants = (toOrder: (typeof sachets & { washFirst?: boolean })[]) =>
      house.issue(wednesdayMs, {
        advice: { decision: 'order', sentence: 'Order 2 cards of Encarsia by Mon 18 May.', toOrder },
      });
    wants([sachets]);
    await house.open(wednesdayMs);
    expect(house.one('order-by')?.text).toMatch(/^Order \d+ .* by Mon 18 May\.$/);
    // A smaller parcel of the same for another pest, that wants a wash before it: one parcel and one wash serve both.
    wants([sachets, { ...sachets, number: 500, washFirst: true }]);
    await house.open(wednesdayMs);
    expect(house.one('order-by')?.text).toMatch(
      /^Order 10 .* by Mon 18 May\. Wash the plants before it comes\.$/,
    );
  });

  it('release-window: opens the day before the parcel, is urgent once it has come, ends with the release', async () => {
    house.order({ expectedOn: '2026-05-20' });
    house.issue(wednesdayMs);
    const monday = Date.parse('2026-05-18T12:00:00Z');
    expect(await house.open(monday)).not.toContain('release-window');
    expect(await house.open(monday + dayMs)).toContain('release-window');
    expect(house.one('release-window')).toMatchObject({
      text: 'A parcel is due Wed 20 May: hang the Encarsia by Fri 22 May, low and in shade.',
      deadlineMs: Date.parse('2026-05-22T23:00:00Z') - 1,
    });
    expect(house.one('release-window')).not.toHaveProperty('urgentFromMs');
    house.order({ expectedOn: '2026-05-20', arrivedAt: '2026-05-20T09:00:00Z' });
    await house.open(Date.parse('2026-05-20T10:00:00Z'));
    expect(house.one('release-window')).toMatchObject({
      text: 'Hang the Encarsia by Fri 22 May, low and in shade.',
      urgentFromMs: Date.parse('2026-05-19T23:00:00Z'),
    });
    house.put('release', release('2026-05-20T18:00:00Z'), 'r1');
    await house.open(Date.parse('2026-05-20T19:00:00Z'));
    expect(house.one('release-window')).toMatchObject({ state: 'done', ended: 'The release was entered.' });
  });

  it('cold-spell: only when the days of the parcel fall below what the enemy lives above', async () => {
    house.order({ expectedOn: '2026-05-20' });
    house.issue(wednesdayMs, { minC: (day) => (day < 6 ? 2 : 14) });
    expect(await house.open(wednesdayMs)).not.toContain('cold-spell');
    house.issue(wednesdayMs + hourMs, { minC: (day) => (day === 9 ? 2.4 : 14) });
    expect(await house.open(wednesdayMs + hourMs)).toContain('cold-spell');
    expect(house.one('cold-spell')?.text).toMatch(/^Cold is expected from Fri 22 May, down to about 2 °C\./);
    house.issue(wednesdayMs + dayMs);
    await house.open(wednesdayMs + dayMs);
    expect(house.one('cold-spell')).toMatchObject({
      state: 'withdrawn',
      ended: 'No such cold is expected any more.',
    });
  });

  it('cold-spell: once the release is entered it does not say that the cold is gone', async () => {
    house.order({ expectedOn: '2026-05-20', arrivedAt: '2026-05-20T09:00:00Z' });
    const came = Date.parse('2026-05-20T10:00:00Z');
    house.issue(came, { minC: () => 2 });
    expect(await house.open(came)).toContain('cold-spell');
    house.put('release', release('2026-05-20T18:00:00Z'), 'r1');
    await house.open(came + 9 * hourMs);
    expect(house.one('cold-spell')).toMatchObject({
      state: 'done',
      ended: 'The parcel is set out, or no longer waited for.',
    });
  });

  // The thresholds are common practice, no source: 35 °C in the house, 30 °C outdoors.
  it('hot-delivery: only when the day of the parcel itself is hot in the house', async () => {
    house.order({ expectedOn: '2026-05-20' });
    house.issue(wednesdayMs, { minC: (day) => (day === 7 ? 22 : 25) });
    expect(await house.open(wednesdayMs)).not.toContain('hot-delivery');
    house.issue(wednesdayMs + hourMs, { minC: (day) => (day === 7 ? 24.6 : 14) });
    expect(await house.open(wednesdayMs + hourMs)).toContain('hot-delivery');
    expect(house.one('hot-delivery')).toMatchObject({
      text: 'Heat is expected on Wed 20 May, up to about 37 °C in the house. Ask for another day, or be there when it comes. Keep the parcel of Encarsia in shade and cool, and set it out in the evening.',
      reason: 'Encarsia is due that day, and animals in a hot parcel die.',
      // Midnights of London summer time.
      deadlineMs: Date.parse('2026-05-20T23:00:00Z') - 1,
      urgentFromMs: Date.parse('2026-05-17T23:00:00Z'),
    });
    house.issue(wednesdayMs + dayMs);
    await house.open(wednesdayMs + dayMs);
    expect(house.one('hot-delivery')).toMatchObject({
      state: 'withdrawn',
      ended: 'No such heat is expected any more.',
    });
  });

  it('hot-delivery: by the newest forecast outdoors, where a parcel may wait on the doorstep', async () => {
    house.order({ expectedOn: '2026-05-20' });
    house.issue(wednesdayMs);
    const outdoors = (time: string, temperatureC: number, issuedMs: number) =>
      house.store.outdoor.add(placeId, [{ timeMs: Date.parse(time), temperatureC, issuedMs }]);
    // The evening before, in London, is another day.
    outdoors('2026-05-19T22:30:00Z', 33, wednesdayMs);
    outdoors('2026-05-20T14:00:00Z', 29, wednesdayMs);
    expect(await house.open(wednesdayMs)).not.toContain('hot-delivery');
    outdoors('2026-05-20T14:00:00Z', 32.4, wednesdayMs + hourMs);
    expect(await house.open(wednesdayMs)).not.toContain('hot-delivery');
    expect(await house.open(wednesdayMs + hourMs)).toContain('hot-delivery');
    expect(house.one('hot-delivery')?.text).toContain('up to about 32 °C outdoors.');
    outdoors('2026-05-20T14:00:00Z', 24, wednesdayMs + dayMs);
    await house.open(wednesdayMs + dayMs);
    expect(house.one('hot-delivery')?.state).toBe('withdrawn');
  });

  it('hot-delivery: of a parcel that has come and waits, and done when it is set out', async () => {
    house.order({ expectedOn: '2026-05-19', arrivedAt: '2026-05-19T09:00:00Z' });
    const nextDay = Date.parse('2026-05-20T06:00:00Z');
    house.issue(nextDay, { minC: () => 25 });
    expect(await house.open(nextDay)).toContain('hot-delivery');
    expect(house.one('hot-delivery')?.text).toBe(
      'Heat is expected on Wed 20 May, up to about 37 °C in the house. Keep the parcel of Encarsia in shade and cool, and set it out in the evening.',
    );
    house.put('release', release('2026-05-20T18:00:00Z'), 'r1');
    await house.open(nextDay + 13 * hourMs);
    expect(house.one('hot-delivery')?.state).toBe('done');
  });

  it('peak-expected: said when probable, held until unlikely, left to the advice when that speaks', async () => {
    const when = dates('2026-05-30T09:00:00Z', '2026-06-08T09:00:00Z');
    const at = (n: number) => wednesdayMs + n * dayMs;
    const ahead = (probability: number) => ({
      pests: [pestAhead({ passesLimit: { probability, by: '2026-07-22T09:00:00Z', when } })],
    });
    house.issue(at(0), ahead(0.6));
    expect(await house.open(at(0))).not.toContain('peak-expected');
    house.issue(at(1), ahead(0.8));
    expect(await house.open(at(1))).toContain('peak-expected');
    expect(house.one('peak-expected')?.text).toBe(
      'Whitefly will probably (8 of 10) pass your limit between Sat 30 May and Mon 8 June.',
    );
    const over = pestAhead({
      passesLimit: { probability: 0.8, by: '2026-07-22T09:00:00Z', when },
      counted: { unit: 'trap-week', kind: 'whitefly', limit: 2 },
    });
    house.issue(at(1) + hourMs, { pests: [over] });
    await house.open(at(1) + hourMs);
    expect(house.one('peak-expected')).toMatchObject({
      state: 'done',
      ended: 'It was counted over your limit.',
    });
    house.issue(at(2), ahead(0.8));
    expect(await house.open(at(2))).toContain('peak-expected');
    house.issue(at(3), ahead(0.3));
    await house.open(at(3));
    expect(house.one('peak-expected')?.state).toBe('withdrawn');
    house.issue(at(4), { ...ahead(0.8), advice: { decision: 'wash', sentence: 'Wash the peppers.' } });
    expect(await house.open(at(4))).not.toContain('peak-expected');
  });

  it('peak-expected: held though it moves farther off, and left alone while a parcel against it is on its way', async () => {
    const near = dates('2026-05-30T09:00:00Z', '2026-06-08T09:00:00Z');
    const far = dates('2026-06-10T09:00:00Z', '2026-06-28T09:00:00Z');
    const ahead = (when: typeof near) => ({
      pests: [pestAhead({ passesLimit: { probability: 0.8, by: '2026-07-22T09:00:00Z', when } })],
    });
    house.issue(wednesdayMs, ahead(far));
    expect(await house.open(wednesdayMs)).not.toContain('peak-expected');
    house.issue(wednesdayMs + hourMs, ahead(near));
    expect(await house.open(wednesdayMs + hourMs)).toContain('peak-expected');
    house.issue(wednesdayMs + 2 * hourMs, ahead(far));
    expect(await house.open(wednesdayMs + 2 * hourMs)).toContain('peak-expected');
    house.order({ orderedAt: new Date(wednesdayMs + 2 * hourMs).toISOString(), expectedOn: '2026-05-20' });
    expect(await house.open(wednesdayMs + 3 * hourMs)).not.toContain('peak-expected');
    expect(house.one('peak-expected')).toMatchObject({
      state: 'done',
      ended: 'A parcel against it is on its way.',
    });
  });

  it('count-due: from the seventh day on, once however late, done by the next count', async () => {
    house.issue(wednesdayMs);
    expect(await house.open(wednesdayMs + 6 * dayMs)).toEqual([]);
    expect(await house.open(wednesdayMs + 7 * dayMs)).toEqual(['count-due']);
    expect(await house.open(wednesdayMs + 9 * dayMs)).toEqual(['count-due']);
    expect(house.one('count-due')).toMatchObject({
      raisedAtMs: wednesdayMs + 7 * dayMs,
      text: 'Count the traps: due Wed 20 May.',
    });
    house.count('2026-05-22');
    expect(await house.open(wednesdayMs + 9 * dayMs)).toEqual([]);
    expect(house.one('count-due')).toMatchObject({ state: 'done', ended: 'It was counted.' });
  });

  it('count-due: a lost card is no count, and a resting house wants none', async () => {
    house.issue(wednesdayMs);
    house.put(
      'trapCount',
      {
        id: 'lost',
        trapId: 'door',
        time: '2026-05-19T08:00:00Z',
        exposureDays: 6,
        countedFraction: 1,
        card: 'lost',
        counts: {},
      },
      'lost',
    );
    expect(await house.open(wednesdayMs + 7 * dayMs)).toEqual(['count-due']);
    house.issue(wednesdayMs + 8 * dayMs, { advice: { daysToKeep: [] } });
    expect(await house.open(wednesdayMs + 8 * dayMs)).toEqual([]);
    expect(house.one('count-due')).toMatchObject({
      state: 'withdrawn',
      ended: 'The house rests: no count is wanted.',
    });
  });

  it('waiting-over: on the day, for the enemy that is wanted; a wash of one day needs no word', async () => {
    house.toOrder(wednesdayMs);
    house.put('treatment', treatment('neem', '2026-05-01T18:00:00Z'), 't1');
    house.put('treatment', treatment('water-jet', '2026-05-02T18:00:00Z'), 't2');
    expect(await house.open(Date.parse('2026-05-14T12:00:00Z'))).not.toContain('waiting-over');
    expect(await house.open(Date.parse('2026-05-15T06:00:00Z'))).toContain('waiting-over');
    expect(house.one('waiting-over')?.text).toBe(
      'The wait after the neem of Fri 1 May is over: Encarsia may be released from Fri 15 May.',
    );
  });

  it('look-again: from the day signs can be seen, ended by a leaf check, not by an older one', async () => {
    house.put('release', release('2026-04-30T18:00:00Z'), 'r1');
    house.put('leafCheck', leaves('2026-05-01T08:00:00Z'), 'l1');
    house.issue(wednesdayMs);
    expect(await house.open(Date.parse('2026-05-01T12:00:00Z'))).not.toContain('look-again');
    const late = Date.parse('2026-05-24T12:00:00Z');
    expect(await house.open(late)).toContain('look-again');
    expect(house.one('look-again')?.text).toBe(
      'Look for black scales: the Encarsia of Thu 30 April should show by now.',
    );
    house.put('leafCheck', leaves('2026-05-24T13:00:00Z'), 'l2');
    expect(await house.open(late + 2 * hourMs)).not.toContain('look-again');
    expect(house.one('look-again')).toMatchObject({ state: 'done', ended: 'You have looked.' });
  });

  it('look-again: on the day of the advice, by the warmth of the house; a sighting that tells ends it', async () => {
    const followedUp = (settlement: Settlement): ReleaseFollowUp => ({
      releaseId: 'r1',
      enemy: 'encarsia-formosa',
      number: 120,
      on: '2026-04-30',
      against: ['trialeurodes-vaporariorum'],
      look: { lookFor: 'black scales', from: '2026-05-28', surelyBy: '2026-06-04', by: 'development' },
      settlement,
      evidence: [],
      next: { what: 'look', text: 'Look.' },
      effects: [],
    });
    const issue = (atMs: number, settlement: Settlement) =>
      house.issue(atMs, {
        advice: { followUp: { releases: [followedUp(settlement)], pests: [], nextYear: [] } },
      });
    house.put('release', release('2026-04-30T18:00:00Z'), 'r1');
    issue(wednesdayMs, 'too-early');
    // The usual three weeks are over, but the house was cool.
    expect(await house.open(Date.parse('2026-05-24T12:00:00Z'))).not.toContain('look-again');
    const after = Date.parse('2026-05-28T12:00:00Z');
    expect(await house.open(after)).toContain('look-again');
    issue(after + hourMs, 'settled');
    expect(await house.open(after + 2 * hourMs)).not.toContain('look-again');
    expect(house.one('look-again')).toMatchObject({ state: 'done', ended: 'They have settled.' });
  });

  it('sensor-silent: after a day, and only of a sensor that is still there', async () => {
    house.issue(wednesdayMs);
    house.put('sensor', { id: 'bench', name: 'Bench sensor', unit: 'Cel' }, 'bench');
    const at = (timeMs: number, sensorId = 'bench') => ({ sensorId, timeMs, temperatureC: 19 });
    await house.store.readings.add(placeId, [at(wednesdayMs), at(wednesdayMs, 'taken-out')]);
    expect(await house.open(wednesdayMs + dayMs)).toEqual([]);
    expect(await house.open(wednesdayMs + dayMs + hourMs)).toEqual(['sensor-silent']);
    await house.store.readings.add(placeId, [at(wednesdayMs + 25 * hourMs)]);
    expect(await house.open(wednesdayMs + 26 * hourMs)).toEqual([]);
    expect(house.one('sensor-silent')).toMatchObject({ state: 'done', ended: 'It speaks again.' });
  });

  it('sensor-doubted: when most of a day is not believed', async () => {
    house.issue(wednesdayMs);
    house.put('sensor', { id: 'bench', name: 'Bench sensor', unit: 'Cel' }, 'bench');
    const at = (hoursAgo: number, doubt?: string) => ({
      sensorId: 'bench',
      timeMs: wednesdayMs - hoursAgo * hourMs,
      temperatureC: 19,
      ...(doubt !== undefined && { doubt }),
    });
    await house.store.readings.add(placeId, [at(5), at(4), at(3, 'stuck'), at(2, 'stuck')]);
    expect(await house.open(wednesdayMs)).toEqual([]);
    await house.store.readings.add(placeId, [at(1.5, 'stuck'), at(1, 'stuck')]);
    expect(await house.open(wednesdayMs)).toEqual(['sensor-doubted']);
    expect(house.one('sensor-doubted')).toMatchObject({
      text: 'Look at Bench sensor: 4 of its 6 readings of the last day are not believed.',
      reason: expect.stringContaining('stuck'),
    });
  });
});

const release = (time: string) => ({
  id: 'r1',
  enemy: 'encarsia-formosa' as const,
  form: 'pupae on cards',
  number: 100,
  time,
  aliveShare: 1,
});
const treatment = (kind: 'neem' | 'water-jet', time: string) => ({
  id: kind === 'neem' ? 't1' : 't2',
  kind,
  time,
  coveredShare: 0.8,
});
const leaves = (time: string) => ({ id: time, time, leaves: 10, seen: [] });
