import { describe, expect, test } from 'vitest';
import { copyName, surplusCopies } from '../../services/backup/rotation.ts';

const dayMs = 86_400_000;
const days = (from: string, count: number, every = 1) =>
  Array.from({ length: count }, (_, i) =>
    copyName(new Date(Date.parse(from) + i * every * dayMs).toISOString().slice(0, 10)),
  );
const left = (names: string[]) => names.filter((name) => !surplusCopies(names).includes(name));

describe('copies that stay', () => {
  test('of a week: all', () => {
    expect(surplusCopies(days('2026-05-01', 7))).toEqual([]);
  });

  test('of a year and a day: seven days, the Sundays of five weeks, the ends of twelve months', () => {
    // 2026-05-17 is a Sunday (ISO 8601 weeks begin on Monday).
    expect(left(days('2025-05-17', 366)).map((name) => name.slice(10, 20))).toEqual([
      ...['2025-06-30', '2025-07-31', '2025-08-31', '2025-09-30', '2025-10-31', '2025-11-30', '2025-12-31'],
      ...['2026-01-31', '2026-02-28', '2026-03-31', '2026-04-19', '2026-04-26', '2026-04-30', '2026-05-03'],
      ...[
        '2026-05-10',
        '2026-05-11',
        '2026-05-12',
        '2026-05-13',
        '2026-05-14',
        '2026-05-15',
        '2026-05-16',
        '2026-05-17',
      ],
    ]);
  });

  test('day by day are those that stay when all are thinned at once', () => {
    const names = days('2025-05-17', 366);
    let kept: string[] = [];
    for (const name of names) kept = left([...kept, name]);
    expect(kept).toEqual(left(names));
  });

  test('are not thinned by the time the machine was off', () => {
    const names = [...days('2024-05-01', 7), ...days('2026-05-01', 3)];
    expect(surplusCopies(names)).toEqual([
      'glasstide-2024-05-03.sqlite',
      'glasstide-2024-05-02.sqlite',
      'glasstide-2024-05-01.sqlite',
    ]);
  });

  test('include every file of another name', () => {
    const others = [
      'notes.txt',
      'glasstide.sqlite',
      'glasstide-2026-05-01.sqlite.part',
      'old-glasstide-2020-01-01.sqlite',
    ];
    expect(
      surplusCopies([...others, ...days('2020-01-01', 300)]).filter((name) => others.includes(name)),
    ).toEqual([]);
  });
});
