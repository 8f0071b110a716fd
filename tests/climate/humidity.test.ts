/** Moist air against PsychroLib 2.5 (ASHRAE equations), an independent library. */
import psychrolib from 'psychrolib';
import { expect, it } from 'vitest';
import {
  dewPointC,
  saturationVapourPressureKPa,
  vapourPressureDeficitKPa,
} from '../../services/model/climate/humidity.ts';

psychrolib.SetUnitSystem(psychrolib.SI);

it('saturation pressure is within 0.3 % of ASHRAE from 0 to 50 °C', () => {
  for (let t = 0; t <= 50; t += 0.5) {
    const reference = psychrolib.GetSatVapPres(t) / 1000;
    expect(Math.abs(saturationVapourPressureKPa(t) / reference - 1)).toBeLessThan(0.003);
  }
});

it('the deficit is within 0.3 % and the dew point within 0.1 °C of ASHRAE', () => {
  for (let t = 10; t <= 40; t += 2.5) {
    for (let humidityPct = 20; humidityPct <= 95; humidityPct += 7.5) {
      const dewPoint = psychrolib.GetTDewPointFromRelHum(t, humidityPct / 100);
      const deficit =
        (psychrolib.GetSatVapPres(t) - psychrolib.GetVapPresFromRelHum(t, humidityPct / 100)) / 1000;
      // Below freezing the reference condenses to ice, FAO-56 to water.
      if (dewPoint > 0)
        expect(Math.abs(dewPointC({ temperatureC: t, humidityPct }) - dewPoint)).toBeLessThan(0.1);
      expect(Math.abs(vapourPressureDeficitKPa({ temperatureC: t, humidityPct }) / deficit - 1)).toBeLessThan(
        0.003,
      );
    }
  }
});

it('a number that is none is refused by name', () => {
  expect(() => saturationVapourPressureKPa(Number.NaN)).toThrow(/air temperature/);
  expect(() => vapourPressureDeficitKPa({ temperatureC: 20, humidityPct: Number.NaN })).toThrow(
    /relative humidity/,
  );
});
