/**
 * Heat and moisture of a small glasshouse, per m2 of floor. Two stores of heat, the air with its
 * plants and the ground with its benches; sun warms both, the skin, the cracks and the vents lose.
 * The constants are judgement for a single-glazed hobby house, no source; a test holds the result
 * within the range of real logs.
 */
export interface House {
  /** Loss through the glass, W/(m2 floor K): about 6 per m2 of glass, twice as much glass as floor. */
  skinWm2K: number;
  /** Share of outdoor radiation that warms the house: light let in, less what the leaves evaporate. */
  sunShare: number;
  /** Vents open from here, fully 5 degrees above. */
  ventFromC: number;
  /** Loss through fully open vents, W/(m2 floor K). */
  ventWm2K: number;
  /** The heater holds this temperature at night while it can. */
  heatToC: number;
  heaterWm2: number;
}

export interface HouseState {
  airC: number;
  groundC: number;
  /** Water vapour, g a m3 of air. */
  vapourGm3: number;
}

/** Mean flows of one step in W/m2 floor; stored = sun + heater - skin - vents. */
export interface HouseFlows {
  sunWm2: number;
  heaterWm2: number;
  skinWm2: number;
  ventWm2: number;
  storedWm2: number;
}

export interface Outdoors {
  outdoorC: number;
  globalWm2: number;
}

const airCapacity = 40_000; // J/(m2 K): air, leaves and water in them
const groundCapacity = 220_000; // J/(m2 K): bench, pots, top of the ground
const exchangeWm2K = 9;
const crackWm2K = 1.5;
const groundShareOfSun = 0.4;
const heightM = 2.2;

/**
 * One step of at most a quarter of an hour. The air is solved implicitly (backward Euler: stable,
 * and exact in energy, because the ground receives what the air gives it).
 */
export function stepHouse(
  house: House,
  state: HouseState,
  outdoors: Outdoors,
  seconds: number,
): { state: HouseState; flows: HouseFlows } {
  const ventShare = clamp((state.airC - house.ventFromC) / 5, 0, 1);
  const vent = ventShare * house.ventWm2K + crackWm2K;
  const sun = house.sunShare * outdoors.globalWm2;
  const sunToAir = (1 - groundShareOfSun) * sun;
  const heater = clamp((house.heatToC + 1 - state.airC) / 2, 0, 1) * house.heaterWm2;

  const storing = airCapacity / seconds;
  const airC =
    (storing * state.airC +
      sunToAir +
      heater +
      exchangeWm2K * state.groundC +
      (house.skinWm2K + vent) * outdoors.outdoorC) /
    (storing + exchangeWm2K + house.skinWm2K + vent);
  const toGround = groundShareOfSun * sun + exchangeWm2K * (airC - state.groundC);
  const groundC = state.groundC + (toGround * seconds) / groundCapacity;

  const skinWm2 = house.skinWm2K * (airC - outdoors.outdoorC);
  const ventWm2 = vent * (airC - outdoors.outdoorC);
  return {
    state: { airC, groundC, vapourGm3: vapour(state, airC, vent, outdoors, seconds) },
    flows: {
      sunWm2: sun,
      heaterWm2: heater,
      skinWm2,
      ventWm2,
      storedWm2: (airCapacity * (airC - state.airC) + groundCapacity * (groundC - state.groundC)) / seconds,
    },
  };
}

/** Leaves give off water with the sun; air changes carry it out and cold glass takes it as dew. */
function vapour(state: HouseState, airC: number, ventWm2K: number, outdoors: Outdoors, seconds: number) {
  const fromLeavesGm3s = (0.0025 + 0.00006 * outdoors.globalWm2) / heightM;
  const airChangesPerS = ventWm2K / (1200 * heightM); // the air that carries this much heat, 1200 J/(m3 K)
  const outdoorVapour = 0.75 * saturationGm3(outdoors.outdoorC);
  const onGlass = saturationGm3((airC + outdoors.outdoorC) / 2);
  const dewPerS = state.vapourGm3 > onGlass ? 0.0015 : 0;
  const mixed =
    (state.vapourGm3 + seconds * (fromLeavesGm3s + airChangesPerS * outdoorVapour + dewPerS * onGlass)) /
    (1 + seconds * (airChangesPerS + dewPerS));
  return Math.min(mixed, saturationGm3(airC) * 0.98);
}

/** Vapour pressure that saturates the air: Magnus form (Alduchov & Eskridge 1996). */
export const saturationHPa = (airC: number) => 6.1094 * Math.exp((17.625 * airC) / (airC + 243.04));

/** Vapour that saturates the air, g/m3, by the gas law. */
export const saturationGm3 = (airC: number) =>
  ((100 * saturationHPa(airC)) / (461.5 * (airC + 273.15))) * 1000;

export const relativeHumidityPct = (state: HouseState) =>
  clamp((100 * state.vapourGm3) / saturationGm3(state.airC), 1, 100);

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
