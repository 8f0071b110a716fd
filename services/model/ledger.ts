/**
 * The degree-day ledger: for every generation begun by a first catch or a release, what each stage needs,
 * what it has so far and when it ends. Linear law with a horizontal cut-off at the plateau, so that it can be
 * checked by hand; the population slows above the plateau or runs by a fitted law (species/record.ts).
 * Degree-days come from the measured curve.
 */
import { degreeDaysBetween, whenReached } from './climate/degreeDays.ts';
import type { TemperatureOutlook } from './climate/outlook.ts';
import { filledHoursBetween, type TemperatureCurve } from './climate/temperatureCurve.ts';
import { expectedDate, type GainAhead, gainAhead, measuredDate } from './ledgerAhead.ts';
import { firstCatches, released, type Start } from './ledgerStarts.ts';
import type { LedgerEntry } from './outcome.ts';
import type { Season } from './season.ts';
import type { DevelopmentStage, SpeciesRecord } from './species/record.ts';
import { hourMs } from './units.ts';

type LedgerStage = LedgerEntry['stages'][number];

/** What is known of temperature at the time of asking. */
interface Knowledge {
  curve: TemperatureCurve;
  outlook: TemperatureOutlook;
  asOfMs: number;
}

/** All generations known or next, pests first; empty without any temperature. */
export function ledger(
  season: Season,
  curve: TemperatureCurve | undefined,
  outlook: TemperatureOutlook,
  asOfMs: number,
): LedgerEntry[] {
  if (!curve) return [];
  const starts = [...firstCatches(season, asOfMs), ...released(season, asOfMs)];
  return starts.flatMap((start) => generations(start, { curve, outlook, asOfMs }));
}

/** Generations one after the other until one is ahead. */
function generations(start: Start, known: Knowledge): LedgerEntry[] {
  const { record, breeds } = start;
  const ahead = gainAhead(known.outlook, record.development, known.asOfMs);
  const between = betweenGenerations(record);
  const entries: LedgerEntry[] = [];
  let { startMs, stages }: Pick<Start, 'startMs' | 'stages'> = start;
  for (let generation = 1; ; generation += 1) {
    const life = measure(known, record, startMs, [...stages, between]);
    entries.push(begunEntry(start, { generation, startMs, stages, life }, known, ahead));
    if (!breeds) return entries;
    const nextMs = life.endsMs[stages.length];
    if (nextMs === undefined) {
      const before = { stages: [...stages, between], soFar: life.soFar };
      return [...entries, ...aheadEntry(start, generation + 1, before, ahead)];
    }
    startMs = nextMs;
    stages = record.development.stages;
  }
}

/** Ends of the stages that are done, and the degree-days since the start, by the measured curve. */
interface Measured {
  endsMs: readonly number[];
  soFar: number;
}

function measure(
  known: Knowledge,
  record: SpeciesRecord,
  startMs: number,
  stages: readonly DevelopmentStage[],
): Measured {
  const { curve, asOfMs } = known;
  const law = { lowerC: record.development.lowerC, upperC: record.development.plateauC };
  const endsMs: number[] = [];
  for (const { degreeDays } of stages) {
    const endMs = whenReached(curve, law, endsMs.at(-1) ?? startMs, degreeDays);
    if (endMs === undefined || endMs > asOfMs) break;
    endsMs.push(endMs);
  }
  const running = degreeDaysBetween(curve, law, endsMs.at(-1) ?? startMs, asOfMs);
  return { endsMs, soFar: totalOf(stages.slice(0, endsMs.length)) + running };
}

interface Generation {
  generation: number;
  startMs: number;
  stages: readonly DevelopmentStage[];
  life: Measured;
}

function begunEntry(start: Start, begun: Generation, known: Knowledge, ahead: GainAhead): LedgerEntry {
  const { startMs, stages, life } = begun;
  const needed = totalOf(stages);
  const lines = stages.map((stage, i): LedgerStage => {
    const passed = stages.slice(0, i + 1);
    const soFar = life.soFar - totalOf(stages.slice(0, i));
    const soFarDegreeDays = Math.min(stage.degreeDays, Math.max(0, soFar));
    const line = { stage: stage.name, neededDegreeDays: stage.degreeDays, soFarDegreeDays };
    const doneMs = life.endsMs[i];
    if (doneMs !== undefined) return { ...line, state: 'done', ends: measuredDate(doneMs) };
    const ends = expectedDate(ahead, { soFar: life.soFar, needed: totalOf(passed), cv: cvOf(passed) });
    return { ...line, state: i === life.endsMs.length ? 'running' : 'ahead', ...(ends && { ends }) };
  });
  const endMs = life.endsMs[stages.length - 1] ?? known.asOfMs;
  return {
    ...common(start, begun.generation),
    startedAt: new Date(startMs).toISOString(),
    neededDegreeDays: needed,
    soFarDegreeDays: Math.min(needed, life.soFar),
    filledHours: filledHours(known.curve, startMs, endMs),
    stages: lines,
  };
}

/** The generation still to come; left out when the outlook is too cold to name its start. */
function aheadEntry(
  start: Start,
  generation: number,
  before: { stages: readonly DevelopmentStage[]; soFar: number },
  ahead: GainAhead,
): LedgerEntry[] {
  const { stages } = start.record.development;
  const dateAfter = (path: readonly DevelopmentStage[]) =>
    expectedDate(ahead, { soFar: before.soFar, needed: totalOf(path), cv: cvOf(path) });
  const begins = dateAfter(before.stages);
  if (!begins) return [];
  const lines = stages.map(({ name, degreeDays }, i): LedgerStage => {
    const ends = dateAfter([...before.stages, ...stages.slice(0, i + 1)]);
    return {
      stage: name,
      neededDegreeDays: degreeDays,
      soFarDegreeDays: 0,
      state: 'ahead',
      ...(ends && { ends }),
    };
  });
  return [
    {
      ...common(start, generation),
      startedAt: begins.q50,
      neededDegreeDays: totalOf(stages),
      soFarDegreeDays: 0,
      filledHours: 0,
      stages: lines,
    },
  ];
}

function common({ id, species, record, startedBy }: Start, generation: number) {
  const { lowerC, plateauC, source } = record.development;
  return {
    id: `${id}-${generation}`,
    species,
    generation,
    startedBy: generation === 1 ? startedBy : ('previous-generation' as const),
    lowerThresholdC: lowerC,
    upperThresholdC: plateauC,
    source,
  };
}

/** From the moult into the adult to the first egg or young, treated like a stage. */
const betweenGenerations = ({ traits }: SpeciesRecord): DevelopmentStage => ({
  name: 'before the first egg',
  degreeDays: traits.adult.preovipositionDegreeDays,
  cv: 0.15,
  survival: 1,
});

const totalOf = (stages: readonly DevelopmentStage[]) => stages.reduce((sum, s) => sum + s.degreeDays, 0);

/** Stages vary independently, so their variances add. */
const cvOf = (stages: readonly DevelopmentStage[]) =>
  Math.hypot(...stages.map((stage) => stage.degreeDays * stage.cv)) / totalOf(stages);

/** Before its first knot the curve holds its first temperature: those hours are filled too. */
function filledHours(curve: TemperatureCurve, fromMs: number, toMs: number): number {
  const unknownMs = Math.max(0, Math.min(curve.timesMs[0]!, toMs) - fromMs);
  return filledHoursBetween(curve, fromMs, toMs) + unknownMs / hourMs;
}
