/** Refused messages: whose page shows them, how they are grouped, what each group is told. */
import { describe, expect, it } from 'vitest';
import type { ParkedMessage } from '../../dashboard/api.ts';
import {
  canBeReadAgain,
  causeAndAdvice,
  grouped,
  shownAt,
} from '../../dashboard/pages/sensors/parkedGroups.ts';
import { refusedMessages } from '../pages/fixtureRecords.ts';
import { place } from '../pages/fixtureSeason.ts';

const messages: ParkedMessage[] = refusedMessages;

describe('refused messages', () => {
  it('are shown at their own place, and everywhere when they name none', () => {
    const shown = shownAt(messages, place.id).map((each) => each.placeId);
    expect(new Set(shown)).toEqual(new Set([place.id, undefined]));
    expect(shownAt(messages, 'another').map((each) => each.topic)).toEqual([
      'glasstide/leanto/readings/bench',
    ]);
  });

  it('stand together by topic and code; what is settled is gone', () => {
    const settled = messages.map((each) => (each.id === 41 ? { ...each, settled: 'mended' } : each));
    const groups = grouped(shownAt(settled, place.id));
    expect(groups.map((group) => [group.code, group.messages.length, group.ofNoPlace])).toEqual([
      ['unit-doubtful', 2, false],
      ['value-missing', 1, false],
      ['time-implausible', 5, false],
      ['topic-unknown-place', 1, true],
    ]);
  });

  it('of a clock that was not set are not offered to be read again', () => {
    const offered = grouped(messages).filter(canBeReadAgain);
    expect(offered.map((group) => group.code)).not.toContain('time-implausible');
    expect(offered.map((group) => group.code)).toContain('topic-unknown-place');
  });

  it('tell cause and advice once', () => {
    const whatToDo = 'Set the clock of the board.';
    expect(causeAndAdvice({ reason: 'The clock was not set. Set the clock.', whatToDo })).toEqual({
      cause: 'The clock was not set.',
      advice: 'Set the clock.',
    });
    expect(causeAndAdvice({ reason: 'There is no place leanto.', whatToDo }).advice).toBe(whatToDo);
    expect(causeAndAdvice({ reason: 'It was 18.2 °C: is it °F?', whatToDo }).cause).toBe(
      'It was 18.2 °C: is it °F?',
    );
  });
});
