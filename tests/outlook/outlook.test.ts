/** The page is what the logs say today, nothing peeks, and the outlook beats what anybody can say. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { hindcast } from './hindcast.ts';
import { halfOf, openAir, warmGlasshouse } from './logs.ts';
import { keptTunnels, outlookFile, outlookPage } from './page.ts';
import { type Line, measuredLines } from './study.ts';

const day = 86_400_000;

it('docs/outlook.md is what the shipped logs say today: run npm run outlook', () => {
  expect(readFileSync(outlookFile, 'utf8')).toBe(outlookPage(keptTunnels()));
});

describe('hindcasts', () => {
  it('do not change when everything after them does', () => {
    const log = warmGlasshouse();
    const cutMs = log.hours[0]!.timeMs + 20 * day;
    const changed = {
      ...log,
      hours: log.hours.map((hour) =>
        hour.timeMs < cutMs || hour.insideC === undefined ? hour : { ...hour, insideC: hour.insideC + 15 },
      ),
    };
    const early = (said: ReturnType<typeof hindcast>) =>
      said.filter(({ originMs }) => originMs <= cutMs).map(({ saidC, members }) => [saidC, members]);
    const before = early(hindcast(log));
    expect(before.length).toBeGreaterThan(100);
    expect(early(hindcast(changed))).toEqual(before);
  });

  it('see a warmer day that did come', () => {
    const year = halfOf(openAir(), Date.UTC(2013, 6, 1), Date.UTC(2013, 7, 15));
    const cutMs = Date.UTC(2013, 7, 1);
    const warmer = {
      ...year,
      hours: year.hours.map((hour) =>
        hour.timeMs < cutMs - day || hour.timeMs >= cutMs ? hour : { ...hour, insideC: hour.insideC! + 6 },
      ),
    };
    const tomorrow = (log: typeof year) =>
      hindcast(log, { members: 1 }).find(({ originMs, leadDays }) => originMs === cutMs && leadDays === 1)!
        .saidC;
    expect(tomorrow(warmer) - tomorrow(year)).toBeGreaterThan(2);
  });
});

describe('on the half not used for choosing', () => {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const lines = [...keptTunnels().measured, ...measuredLines()];
  /** Error over that of the closer of two plain sayings, over all leads. */
  const ratioOf = ({ scores }: Line) =>
    mean(scores.map(({ rmseC }) => rmseC)) /
    Math.min(
      mean(scores.map(({ yesterdayC }) => yesterdayC)),
      mean(scores.map(({ lastWeekC }) => lastWeekC)),
    );
  const [heated, others] = [
    lines.filter(({ what }) => what === 'heated glasshouse, May'),
    lines.filter(({ what }) => what !== 'heated glasshouse, May'),
  ];

  it.each(others)('$what: closer than the better of two plain sayings', (line) => {
    expect(ratioOf(line)).toBeLessThan(0.95);
  });

  it('tells where it was not', () => {
    expect(heated.map(ratioOf).every((ratio) => ratio > 1)).toBe(true);
    expect(outlookPage(keptTunnels())).toContain('- heated glasshouse, May: 1, 2');
  });

  it('ranges hold about what they promise where a forecast is at hand', () => {
    for (const { what, covered } of lines.filter((line) => line.what.endsWith('with a forecast'))) {
      [0.5, 0.8, 0.95].forEach((share, i) => {
        expect(Math.abs(covered[i]! - share), what).toBeLessThan(0.1);
      });
    }
  });
});
