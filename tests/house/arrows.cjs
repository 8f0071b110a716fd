/**
 * Import rules of the house, each with its reason (docs/architecture.md). Run by `npm run check`
 * and by tests/house/house.test.ts.
 */
const model = '^services/model/';

module.exports = {
  forbidden: [
    {
      name: 'no-circles',
      comment: 'Files that import each other cannot be read one at a time.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'model-is-pure',
      comment:
        'The model also runs in the browser and twice with the same result: no node modules, no services.',
      severity: 'error',
      from: { path: model },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'model-knows-no-room',
      comment: 'The model is asked; it never asks a service.',
      severity: 'error',
      from: { path: model },
      to: { path: '^(services|dashboard|simulators|tests)/', pathNot: model },
    },
    {
      name: 'model-has-one-door',
      comment: 'Everybody outside imports services/model/index.ts, so that the inside can move.',
      severity: 'error',
      from: {
        path: '^(services|dashboard|simulators|studies)/',
        // Calibration draws from the prior and fits: the inside is its subject.
        pathNot: [model, '^studies/calibration\\.ts$'],
      },
      to: { path: model, pathNot: '^services/model/index\\.ts$' },
    },
    {
      name: 'model-inside-skips-the-door',
      comment: 'Inside, files import each other directly: the door would close a circle.',
      severity: 'error',
      from: { path: model, pathNot: '^services/model/index\\.ts$' },
      to: { path: '^services/model/index\\.ts$' },
    },
    {
      name: 'numerics-import-nothing-of-ours',
      comment: 'Numerics and units know no biology.',
      severity: 'error',
      from: { path: '^services/model/(numerics/|units\\.ts)' },
      to: { path: '^services/', pathNot: '^services/model/(numerics/|units\\.ts)' },
    },
    {
      name: 'climate-knows-no-animals',
      comment: 'climate <- population <- observation <- inference <- planning: arrows point one way.',
      severity: 'error',
      from: { path: '^services/model/climate/' },
      to: { path: '^services/model/(species|population|observation|inference|planning|scoring)/' },
    },
    {
      name: 'species-are-data',
      comment: 'A species file is a table; it computes nothing.',
      severity: 'error',
      from: { path: '^services/model/species/' },
      to: { path: '^services/model/(population|observation|inference|planning|scoring)/' },
    },
    {
      name: 'population-is-not-observed-here',
      comment: 'How many there are does not depend on who counts.',
      severity: 'error',
      from: { path: '^services/model/population/' },
      to: { path: '^services/model/(observation|inference|planning|scoring)/' },
    },
    {
      name: 'observation-infers-nothing',
      comment: 'A likelihood knows no prior.',
      severity: 'error',
      from: { path: '^services/model/observation/' },
      to: { path: '^services/model/(inference|planning|scoring)/' },
    },
    {
      name: 'inference-advises-nothing',
      comment: 'What is believed does not depend on what it costs.',
      severity: 'error',
      from: { path: '^services/model/inference/' },
      to: { path: '^services/model/planning/' },
    },
    {
      name: 'store-has-one-door',
      comment: 'Rooms see the contract of the store, never its inside; main.ts and the commands open it.',
      severity: 'error',
      from: { path: '^(services|dashboard|simulators)/', pathNot: '^services/(store/|commands/|main\\.ts$)' },
      to: { path: '^services/store/', pathNot: '^services/store/store\\.ts$' },
    },
    {
      name: 'rooms-do-not-look-into-rooms',
      comment: 'broker, ingest, outdoor, forecasting, warnings and api meet in main.ts.',
      severity: 'error',
      from: { path: '^services/(access|backup|broker|ingest|outdoor|forecasting|warnings|api|store)/' },
      to: {
        path: '^services/(backup|broker|ingest|outdoor|forecasting|warnings|api)/',
        pathNot: '^services/$1/',
      },
    },
    {
      name: 'mqtt-only-at-the-edge',
      comment: 'MQTT lives in the broker, the ingest, the MQTT channel and the simulated hardware.',
      severity: 'error',
      from: {
        path: '^(services|dashboard|simulators)/',
        pathNot: '^(services/(broker|ingest|warnings/channels)/|simulators/)',
      },
      to: { path: 'node_modules/(mqtt|aedes)/' },
    },
    {
      name: 'sql-only-in-the-store',
      comment: 'SQL and the database driver stay in services/store.',
      severity: 'error',
      from: { path: '^(services|dashboard|simulators)/', pathNot: '^services/store/' },
      to: { path: 'node_modules/better-sqlite3/' },
    },
    {
      name: 'figures-are-pure',
      comment: 'A figure turns data into a chart configuration; it neither fetches nor touches the page.',
      severity: 'error',
      from: { path: '^dashboard/figures/' },
      to: { path: '^dashboard/(api|state|main|pages)' },
    },
    {
      name: 'simulators-speak-only-mqtt-and-http',
      comment:
        'The virtual glasshouse must not share the forecast’s mistakes; only demo.ts starts the service.',
      severity: 'error',
      from: { path: '^simulators/', pathNot: '^simulators/demo\\.ts$' },
      to: { path: '^services/', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'studies-judge-from-outside',
      comment:
        'A study plays the garden and asks the model; it knows no other room, and only tests know it. One reads what was played to the real warnings.',
      severity: 'error',
      from: { path: '^studies/', pathNot: '^studies/(calibration|warningTelling)\\.ts$' },
      to: { path: '^(services|dashboard)/', pathNot: '^services/model/index\\.ts$' },
    },
    {
      name: 'nothing-imports-studies',
      comment: 'What is judged does not know its judge.',
      severity: 'error',
      from: { path: '^(services|dashboard|simulators)/' },
      to: { path: '^studies/' },
    },
    {
      name: 'nothing-imports-tests',
      comment: 'Tests look at the house, the house does not look at tests.',
      severity: 'error',
      from: { path: '^(services|dashboard|simulators|studies)/' },
      to: { path: '^tests/' },
    },
    {
      name: 'reachable',
      comment:
        'A file nobody reaches from an entry point is dead: delete it. What lies in public the page names itself.',
      severity: 'error',
      from: { orphan: true, path: '^(services|dashboard|simulators)/', pathNot: '^dashboard/public/' },
      to: {},
    },
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: 'specify',
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^(dist|tmp|coverage)/' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
    },
  },
};
