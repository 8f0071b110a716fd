/** The functions of PsychroLib used as reference; the package ships no types. */
declare module 'psychrolib' {
  const psychrolib: {
    SI: number;
    SetUnitSystem(system: number): void;
    /** Pa at degC. */
    GetSatVapPres(temperatureC: number): number;
    GetVapPresFromRelHum(temperatureC: number, relativeHumidity: number): number;
    GetTDewPointFromRelHum(temperatureC: number, relativeHumidity: number): number;
  };
  export default psychrolib;
}
