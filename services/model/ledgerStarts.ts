/** What begins a line of generations in the ledger: the first catch of a pest, or a release. */
import type { Counted, EnemyId, PestId, Release, Season } from './season.ts';
import { speciesById } from './species/catalogue.ts';
import type { DevelopmentStage, SpeciesRecord } from './species/record.ts';
import { leafKindsOf, seenAs } from './species/signs.ts';

export interface Start {
  id: string;
  species: PestId | EnemyId;
  record: SpeciesRecord;
  startMs: number;
  startedBy: 'first-catch' | 'release';
  /** Stages of the first generation; the later ones start from the egg or birth. */
  stages: readonly DevelopmentStage[];
  breeds: boolean;
}

/** The first time each pest was seen; adults were there, so eggs or young from then. */
export function firstCatches(season: Season, asOfMs: number): Start[] {
  return season.place.pests.flatMap((pest) => {
    const kinds = leafKindsOf(pest);
    const { trap } = seenAs(pest);
    const caught = trap ? season.trapCounts.filter((count) => atLeastOne(count.counts[trap])) : [];
    const seen = season.leafChecks.filter((check) =>
      check.seen.some((s) => kinds.includes(s.kind) && ((s.infestedLeaves ?? 0) > 0 || atLeastOne(s.total))),
    );
    const times = [...caught, ...seen].map(({ time }) => Date.parse(time)).filter((ms) => ms <= asOfMs);
    if (times.length === 0) return [];
    const record = speciesById(pest);
    const startMs = Math.min(...times);
    const startedBy = 'first-catch' as const;
    return [{ id: pest, species: pest, record, startMs, startedBy, breeds: true, ...wholeLife(record) }];
  });
}

/** Every release so far, in order of time. */
export function released(season: Season, asOfMs: number): Start[] {
  return season.releases
    .map((release) => ({ release, startMs: Date.parse(release.time) }))
    .filter(({ startMs }) => startMs <= asOfMs)
    .sort((a, b) => a.startMs - b.startMs)
    .map(({ release, startMs }) => {
      const record = speciesById(release.enemy);
      return {
        id: release.id,
        species: release.enemy,
        record,
        startMs,
        startedBy: 'release' as const,
        ...asReleased(release, record),
      };
    });
}

const atLeastOne = (counted: Counted | undefined) =>
  counted !== undefined && (typeof counted === 'number' ? counted : counted.low) > 0;

const wholeLife = (record: SpeciesRecord) => ({ stages: record.development.stages });

/**
 * Adults and mixed stages lay at once: their young start from the egg. Larvae and pupae are on average half
 * through their stage when they arrive (judgement). Larvae released feed, and leave as adults: no young follow.
 */
function asReleased({ form }: Release, record: SpeciesRecord): Pick<Start, 'stages' | 'breeds'> {
  const { stages } = record.development;
  const soldAs = stageSold(form);
  const index = soldAs === undefined ? -1 : stages.findIndex(({ name }) => name.includes(soldAs));
  const first = stages[index];
  if (!first || soldAs === 'egg') return { stages, breeds: true };
  const arriving = { ...first, degreeDays: first.degreeDays / 2 };
  return { stages: [arriving, ...stages.slice(index + 1)], breeds: soldAs !== 'larva' };
}

function stageSold(form: string): 'egg' | 'larva' | 'pupa' | undefined {
  if (/mixed|adult/i.test(form)) return undefined;
  if (/egg/i.test(form)) return 'egg';
  if (/larva/i.test(form)) return 'larva';
  return /pupa|mumm|scale|card/i.test(form) ? 'pupa' : undefined;
}
