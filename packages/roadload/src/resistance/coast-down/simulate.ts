/** A run ready to be calculated, in SI units. @internal */
export interface PreparedRun {
  readonly direction: "out" | "back";
  readonly time: Float64Array;
  readonly speed: Float64Array;
  /** Wind against the vehicle at every row. */
  readonly headWind: Float64Array;
  /** Rolling resistance in this run per that at the reference temperature. */
  readonly tyreFactor: number;
  /** Density of the air in this run per that of the reference. */
  readonly airFactor: number;
  /** Weight along the road, positive uphill. */
  readonly gradeForce: number;
  /** Cosine of the road's angle. */
  readonly cosine: number;
}

/** What slows a vehicle down in one run, in SI units: the last is not of the tyres, and not scaled with them. @internal */
export interface RunCoefficients {
  readonly constant: number;
  readonly linear: number;
  readonly quadratic: number;
  readonly directional: number;
}

/** Speeds of a run for given coefficients, and how they change with each of them. @internal */
export interface Simulated {
  readonly speed: Float64Array;
  /** How it changes with each coefficient. */
  readonly byConstant: Float64Array;
  readonly byLinear: Float64Array;
  readonly byQuadratic: Float64Array;
  /** How it changes with the speed at the start. */
  readonly byStart: Float64Array;
}

/** Longest step of the integration, in s: a car's speed decays over some 50 s, so that a step errs by less than 1e-10 of it. */
const LONGEST_STEP = 1;

/**
 * The speed of a vehicle that coasts, M_e·dv/dt = −F(v), and its derivatives by the coefficients, by the classical Runge-Kutta
 * method of fourth order. Between rows the wind is linear.
 * @internal
 */
export function simulate(
  run: PreparedRun,
  { constant, linear, quadratic, directional }: RunCoefficients,
  startSpeed: number,
  effectiveMass: number,
): Simulated {
  const { time, headWind, tyreFactor, airFactor, gradeForce, cosine } = run;
  const rows = time.length;
  const columns = [0, 1, 2, 3, 4].map(() => new Float64Array(rows)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const derivative = (y: Float64Array, wind: number, out: Float64Array): void => {
    const v = y[0] as number;
    const air = v + wind;
    const push = air * Math.abs(air);
    const force =
      tyreFactor * (constant * cosine + linear * v) + directional * v + airFactor * quadratic * push + gradeForce;
    const slope = -(tyreFactor * linear + directional + 2 * airFactor * quadratic * Math.abs(air)) / effectiveMass;
    out[0] = -force / effectiveMass;
    out[1] = slope * (y[1] as number) - (tyreFactor * cosine) / effectiveMass;
    out[2] = slope * (y[2] as number) - (tyreFactor * v) / effectiveMass;
    out[3] = slope * (y[3] as number) - (airFactor * push) / effectiveMass;
    out[4] = slope * (y[4] as number);
  };
  const state = Float64Array.of(startSpeed, 0, 0, 0, 1);
  const scratch = scratchOf(state.length);
  const keep = (row: number): void => {
    for (let k = 0; k < 5; k++) (columns[k] as Float64Array)[row] = state[k] as number;
  };
  keep(0);
  for (let row = 1; row < rows; row++) {
    const span = (time[row] as number) - (time[row - 1] as number);
    const steps = Math.max(1, Math.ceil(span / LONGEST_STEP));
    const before = headWind[row - 1] as number;
    const change = (headWind[row] as number) - before;
    for (let step = 0; step < steps; step++) {
      advance(state, span / steps, before + (change * step) / steps, change / steps, derivative, scratch);
    }
    keep(row);
  }
  const [speed, byConstant, byLinear, byQuadratic, byStart] = columns;
  return { speed, byConstant, byLinear, byQuadratic, byStart };
}

type Derivative = (y: Float64Array, wind: number, out: Float64Array) => void;

/** Room for one step, made once a run and not once a step. */
interface Scratch {
  readonly slopes: readonly [Float64Array, Float64Array, Float64Array, Float64Array];
  readonly at: Float64Array;
}

function scratchOf(size: number): Scratch {
  const make = () => new Float64Array(size);
  return { slopes: [make(), make(), make(), make()], at: make() };
}

function advance(
  state: Float64Array,
  h: number,
  wind: number,
  windChange: number,
  derivative: Derivative,
  { slopes: [first, second, third, fourth], at }: Scratch,
): void {
  const move = (by: number, slope: Float64Array): Float64Array => {
    for (let i = 0; i < at.length; i++) at[i] = (state[i] as number) + by * (slope[i] as number);
    return at;
  };
  derivative(state, wind, first);
  derivative(move(h / 2, first), wind + windChange / 2, second);
  derivative(move(h / 2, second), wind + windChange / 2, third);
  derivative(move(h, third), wind + windChange, fourth);
  for (let i = 0; i < state.length; i++) {
    const middle = (second[i] as number) + (third[i] as number);
    state[i] = (state[i] as number) + (h / 6) * ((first[i] as number) + 2 * middle + (fourth[i] as number));
  }
}
