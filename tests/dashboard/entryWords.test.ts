/** The history of an entry tells its versions in the words of its row, so each field must be heard in them. */
import { describe, expect, it, vi } from 'vitest';
import { leafWords, trapCountWords } from '../../dashboard/pages/releases/entryWords.ts';
import { type LeafCheck, leafCheck, type TrapCount, trapCount } from '../../services/model/index.ts';

// The page knows the chosen place by it.
vi.hoisted(() => vi.stubGlobal('localStorage', { getItem: () => null }));

const traps = ['door', 'mid'].map((id) => ({
  id,
  version: 1,
  changedAt: '2026-05-01T08:00:00Z',
  deleted: false,
  data: { id, name: `Trap ${id}`, hungAt: '2026-05-01T08:00:00Z' },
}));
const count: TrapCount = {
  id: 'c1',
  trapId: 'door',
  time: '2026-05-12T18:00:00Z',
  exposureDays: 7,
  countedFraction: 1,
  card: 'new',
  counts: { whitefly: 3 },
};
const wordsOf = (data: TrapCount) => {
  const record = { id: data.id, version: 1, changedAt: data.time, deleted: false, data };
  const { name, note, timeMs } = trapCountWords(record, traps);
  return { name, note, timeMs };
};

describe('the words of a trap count', () => {
  const changes: Omit<Required<TrapCount>, 'id'> = {
    trapId: 'mid',
    time: '2026-05-12T17:00:00Z',
    exposureDays: 14,
    countedFraction: 0.5,
    card: 'same',
    counts: { whitefly: 30 },
    note: 'a leaf stuck to it',
  };

  it.each(Object.entries(changes))('tell a change of %s', (field, changed) => {
    expect(wordsOf({ ...count, [field]: changed })).not.toEqual(wordsOf(count));
  });

  it('are tried with every field that a count has', () => {
    expect(Object.keys({ ...changes, id: '' }).sort()).toEqual(Object.keys(trapCount.shape).sort());
  });

  it('tell the days it hung, and that it hung on', () => {
    expect(wordsOf(count).note).toBe('whitefly 3, 7 days');
    expect(wordsOf({ ...count, exposureDays: 1, card: 'same' }).note).toBe(
      'whitefly 3, same trap as before, 1 day',
    );
    expect(wordsOf({ ...count, card: 'lost' }).note).toBe('trap lost, a gap, 7 days');
  });
});

describe('the words of a leaf check', () => {
  const plantings = [
    { id: 'p1', version: 1, changedAt: '', deleted: false, data: { id: 'p1', crop: 'Cucumber', plants: 6 } },
  ];
  const check: LeafCheck = {
    id: 'l1',
    time: '2026-05-12T18:00:00Z',
    leaves: 10,
    seen: [{ kind: 'whitefly-adult', infestedLeaves: 3 }],
  };
  const changes: Omit<Required<LeafCheck>, 'id'> = {
    time: '2026-05-12T17:00:00Z',
    plantingId: 'p1',
    leaves: 12,
    seen: [{ kind: 'whitefly-adult', infestedLeaves: 3, total: 8 }],
    note: 'by lamplight',
  };
  const wordsOf = (data: LeafCheck) => {
    const record = { id: data.id, version: 1, changedAt: data.time, deleted: false, data };
    const { name, note, timeMs } = leafWords(record, plantings);
    return { name, note, timeMs };
  };

  it.each(Object.entries(changes))('tell a change of %s', (field, changed) => {
    expect(wordsOf({ ...check, [field]: changed })).not.toEqual(wordsOf(check));
  });

  it('are tried with every field that a check has', () => {
    expect(Object.keys({ ...changes, id: '' }).sort()).toEqual(Object.keys(leafCheck.shape).sort());
  });

  it('tell the plants, the leaves with any, how many in all, and the note', () => {
    expect(wordsOf({ ...check, ...changes })).toMatchObject({
      name: '12 leaves of cucumber',
      note: 'whitefly 3 (8 in all), by lamplight',
    });
    expect(wordsOf({ ...check, seen: [{ kind: 'whitefly-adult', total: { low: 6, high: 20 } }] }).note).toBe(
      'whitefly 6–20',
    );
  });
});
