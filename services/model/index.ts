/** The one door to the model for everybody outside services/model. */
export * from './outcome.ts';
export * from './season.ts';
