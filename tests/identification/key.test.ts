/**
 * The key as data: whoever answers what an animal shows, in any order of surety, comes to that animal. The characters
 * themselves are published; each kind names its sources.
 */
import { assert, constantFrom, property } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { askingOrder, type Value } from '../../services/model/identification/characters.ts';
import { doubles } from '../../services/model/identification/doubles.ts';
import { sizesOf } from '../../services/model/identification/key.ts';
import type { Appearance } from '../../services/model/identification/kind.ts';
import {
  type CharacterId,
  characters,
  identificationSources,
  type KeyAnswer,
  type KeyKind as Kind,
  keyStep,
  keyKinds as kinds,
  lookFor,
  mostQuestions,
  notSure,
  sightingWord,
  sightingWords,
} from '../../services/model/index.ts';

interface Ending {
  answers: readonly KeyAnswer[];
  left: readonly Kind[];
}
/** Every way through the key, each question also answered with `not-sure`. */
function endings(answers: readonly KeyAnswer[] = []): Ending[] {
  const step = keyStep(answers);
  if (!('ask' in step)) return [{ answers, left: step.left }];
  const values = [...step.options.map(({ value }) => value), notSure] as const;
  return values.flatMap((value) => endings([...answers, { character: step.ask, value }]));
}
const all = endings();
const sure = all.filter(({ answers }) => answers.every(({ value }) => value !== notSure));

const shown = (kind: Kind, seen: Appearance, character: CharacterId): readonly Value[] =>
  character === 'size' ? sizesOf(kind) : (seen[character] ?? []);

/** Walks the key answering as this appearance does; `pick` chooses among several answers, or not-sure. */
function walk(kind: Kind, seen: Appearance, pick: (values: readonly Value[]) => KeyAnswer['value']): Ending {
  const answers: KeyAnswer[] = [];
  for (;;) {
    const step = keyStep(answers);
    if (!('ask' in step)) return { answers, left: step.left };
    answers.push({ character: step.ask, value: pick(shown(kind, seen, step.ask)) });
  }
}
const appearances = kinds.flatMap((kind) => kind.seen.map((seen) => ({ kind, seen })));

describe('the key', () => {
  it.each(kinds.map((kind) => [kind.id, kind] as const))('%s: every listed answer leads to it', (_, kind) => {
    for (const seen of kind.seen) {
      for (const character of askingOrder) {
        for (const wanted of shown(kind, seen, character)) {
          const { left } = walk(kind, seen, (values) => (values.includes(wanted) ? wanted : values[0]!));
          expect(left.map(({ id }) => id)).toContain(kind.id);
        }
      }
    }
  });

  it('an animal stays in the key whichever of its answers are given and whatever is not sure', () => {
    assert(
      property(constantFrom(...appearances), constantFrom(0, 1, 2, 3, 4, 5, 6, 7), (one, choice) => {
        let turn = choice;
        const { left, answers } = walk(one.kind, one.seen, (values) => {
          turn = (turn * 5 + 3) % 8;
          return turn % 3 === 0 ? notSure : values[turn % values.length]!;
        });
        expect(left).toContain(one.kind);
        expect(answers.length).toBeLessThanOrEqual(mostQuestions);
      }),
      { seed: 11, numRuns: 400 },
    );
  });

  it('ends after at most four questions and a choice among at most four pictures, when each is answered', () => {
    for (const { answers, left } of sure) {
      expect(answers.length).toBeLessThanOrEqual(4);
      expect(left.length).toBeGreaterThan(0);
      expect(left.length).toBeLessThanOrEqual(4);
    }
    expect(new Set(sure.flatMap(({ left }) => left.map(({ id }) => id))).size).toBe(kinds.length);
  });

  it('never offers an answer that leads nowhere, and going back asks the same question again', () => {
    for (const { answers, left } of all) {
      expect(left.length).toBeGreaterThan(0);
      answers.forEach((answer, i) => {
        const before = keyStep(answers.slice(0, i));
        expect('ask' in before && before.ask).toBe(answer.character);
      });
    }
  });

  it('says what to look for wherever two are left', () => {
    const pairs = all.filter(({ left }) => left.length === 2);
    expect(pairs.length).toBeGreaterThan(0);
    const missing = pairs.filter(({ left }) => lookFor(left) === undefined);
    expect(missing.map(({ left }) => left.map(({ id }) => id).join(' + '))).toEqual([]);
  });

  it('keeps no word about a pair that the key never ends with', () => {
    const ends = all.filter(({ left }) => left.length === 2).map(({ left }) => left.map(({ id }) => id));
    const idle = doubles.filter(({ pair }) => !ends.some((end) => pair.every((id) => end.includes(id))));
    expect(idle.map(({ pair }) => pair)).toEqual([]);
  });

  it('shows those who share all answers together, never one without the other', () => {
    const face = (kind: Kind) => JSON.stringify([kind.seen, sizesOf(kind)]);
    const twins = kinds.flatMap((one, i) =>
      kinds.slice(i + 1).flatMap((other) => (face(one) === face(other) ? [[one, other] as const] : [])),
    );
    expect(twins.map((pair) => pair.map(({ id }) => id))).toContainEqual([
      'glasshouse-whitefly',
      'tobacco-whitefly',
    ]);
    for (const [one, other] of twins) {
      for (const { left } of all) expect(left.includes(one)).toBe(left.includes(other));
    }
  });

  it('offers answers in the order of the words, whatever is left', () => {
    for (const { answers } of all) {
      const step = keyStep(answers.slice(0, -1));
      if (!('ask' in step)) continue;
      const order = Object.keys(characters[step.ask].values);
      const places = step.options.map(({ value }) => order.indexOf(value));
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  });

  it('has no word for an answer that no kind gives, and no kind an answer without words', () => {
    for (const character of askingOrder) {
      const given = new Set(appearances.flatMap(({ kind, seen }) => shown(kind, seen, character)));
      expect([...given].sort()).toEqual(Object.keys(characters[character].values).sort());
    }
  });
});

describe('the kinds', () => {
  it('each has a word of its own for its sighting, of at most 80 characters, and names its sources', () => {
    expect(new Set(sightingWords.map(({ what }) => what)).size).toBe(sightingWords.length);
    expect(new Set(kinds.map(({ id }) => id)).size).toBe(kinds.length);
    for (const kind of kinds) {
      expect(kind.what.length).toBeLessThanOrEqual(80);
      expect(sightingWord(kind.what)?.side).toBe(kind.side);
      expect(kind.sources.length).toBeGreaterThan(0);
    }
    const used = new Set(kinds.flatMap(({ sources }) => sources));
    expect([...used].sort()).toEqual(Object.keys(identificationSources).sort());
  });

  it('friends are to be left alone, pests are counted or noted', () => {
    for (const { id, side, whatToDo } of kinds) {
      if (side === 'friend') expect(whatToDo, id).toMatch(/^Leave/);
      if (side === 'pest') expect(whatToDo, id).toMatch(/[Cc]ount|[Nn]ote|release/);
    }
  });
});
