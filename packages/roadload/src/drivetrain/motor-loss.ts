import {
  type AngularVelocity,
  InputError,
  type Power,
  type Quantity,
  type Relation,
  readNumber,
  readOptions,
  relation,
  type Source,
  type Torque,
} from "@tarewatt/units";

/** Losses of a motor in torque T and angular velocity ω: k_c·T² + k_i·ω + k_w·ω³ + C, in SI units. */
export interface MotorLossCoefficients {
  /** Loss in the windings per torque squared, k_c, in W/(N·m)². */
  readonly copper: number;
  /** Loss in the iron per angular velocity, k_i, in W·s. */
  readonly iron: number;
  /** Loss by friction and windage per angular velocity cubed, k_w, in W·s³. */
  readonly windage: number;
  /** Constant loss while the motor turns, C, in W. */
  readonly constant: number;
  /** Peak power at the shaft of the motor that the coefficients are of, in W; {@link scaleMotor} needs it. */
  readonly peakPower?: number | undefined;
  /** What a reader should know, such as the age of the machine. */
  readonly note?: string | undefined;
  /** Where the coefficients are from. */
  readonly source?: Source | undefined;
}

/** Inputs of {@link motorLoss}. */
export interface MotorLossInputs {
  /** Torque at the shaft. */
  readonly torque: Quantity<Torque>;
  /** Angular velocity of the shaft. */
  readonly angularVelocity: Quantity<AngularVelocity>;
  /** k_c, as the number of W/(N·m)². */
  readonly copper: number;
  /** k_i, as the number of W·s. */
  readonly iron: number;
  /** k_w, as the number of W·s³. */
  readonly windage: number;
  /** C, as the number of W. */
  readonly constant: number;
}

const coefficient = (symbol: string, meaning: string) => ({ symbol, unit: "1", meaning, atLeast: 0 }) as const;

/**
 * Power that a motor loses at a torque and an angular velocity, driving or braking.
 *
 * Field weakening is not in it: above base speed the copper term of a real motor is larger.
 *
 * @throws InputError `NEGATIVE`; otherwise as every relation
 * @example
 * const { copper, iron, windage, constant } = inductionMotor100kW;
 * motorLoss({ torque: q("100 N·m"), angularVelocity: q("500 rad/s"), copper, iron, windage, constant }).in("W"); // 4230
 */
export const motorLoss: Relation<MotorLossInputs, Quantity<Power>> = /* @__PURE__ */ relation({
  name: "power lost in the motor",
  inputs: {
    torque: { symbol: "T", unit: "N·m", meaning: "torque at the shaft" },
    angularVelocity: { symbol: "ω", unit: "rad/s", meaning: "angular velocity of the shaft", atLeast: 0 },
    copper: /* @__PURE__ */ coefficient("k_c", "loss in the windings, number of W/(N·m)²"),
    iron: /* @__PURE__ */ coefficient("k_i", "loss in the iron, number of W·s"),
    windage: /* @__PURE__ */ coefficient("k_w", "friction and windage, number of W·s³"),
    constant: /* @__PURE__ */ coefficient("C", "constant loss, number of W"),
  },
  result: { symbol: "P_l", unit: "W" },
  expression: "k_c·T² + k_i·ω + k_w·ω^3 + C",
  source: {
    document: "Electric Vehicle Technology Explained (Wiley)",
    section: "motor efficiency",
    status: "memory",
  },
  validity: "below base speed; above it k_c rises",
  evaluate: ({ torque, angularVelocity, copper, iron, windage, constant }) =>
    copper * torque ** 2 + iron * angularVelocity + windage * angularVelocity ** 3 + constant,
});

/** A brushed permanent-magnet motor of 2 to 5 kW, of the 1990s. */
export const smallBrushedMotor = /* @__PURE__ */ Object.freeze({
  /** In W/(N·m)². */
  copper: 1.5,
  /** In W·s. */
  iron: 0.1,
  /** In W·s³. */
  windage: 1e-5,
  /** In W. */
  constant: 20,
  /** The class of the motor, 2 to 5 kW, by its upper end; in W. */
  peakPower: 5000,
  /** What it is. */
  note: "a small machine of the 1990s: scaled up it is a rough prior, no modern traction motor",
  /** Where the values are from. */
  source: /* @__PURE__ */ Object.freeze<Source>({
    document: "Electric Vehicle Technology Explained (Wiley)",
    section: "table of motor efficiency coefficients",
    status: "memory",
  }),
} as const satisfies MotorLossCoefficients);

/** A high-speed induction motor of 100 kW, of the 1990s. */
export const inductionMotor100kW = /* @__PURE__ */ Object.freeze({
  /** In W/(N·m)². */
  copper: 0.3,
  /** In W·s. */
  iron: 0.01,
  /** In W·s³. */
  windage: 5e-6,
  /** In W. */
  constant: 600,
  /** In W. */
  peakPower: 100_000,
  /** What it is. */
  note: "a machine of the 1990s: modern permanent-magnet motors lose less at part load",
  /** Where the values are from. */
  source: /* @__PURE__ */ Object.freeze<Source>({
    document: "Electric Vehicle Technology Explained (Wiley)",
    section: "range-modelling listing",
    status: "quoted",
  }),
} as const satisfies MotorLossCoefficients);

/** Options of {@link scaleMotor}. */
export interface ScaleMotorOptions {
  /** The motor to scale; it must say its peak power. */
  readonly motor: MotorLossCoefficients;
  /** Peak power wanted at the shaft. */
  readonly peakPower: Quantity<Power>;
}

/**
 * A motor of another size with the same efficiency at the same part of its torque and the same speed.
 *
 * The rule is that of Willans scaling, a machine made longer: torque, and every loss at the same part of the torque, grow
 * with the size s, so k_c becomes k_c/s, the other terms s times larger. It says nothing of a change of technology. Beyond one and a half
 * times the size, or below two thirds of it, the `note` says so, and a drivetrain of it warns.
 *
 * @param options - motor and peak power
 * @returns coefficients of the scaled motor
 * @throws InputError `INCONSISTENT` when the motor does not say its peak power, `NEGATIVE`, `OUT_OF_RANGE`, and what
 *   `readOptions` throws
 * @example
 * scaleMotor({ motor: inductionMotor100kW, peakPower: q("200 kW") }).copper; // 0.15
 */
export function scaleMotor(options: ScaleMotorOptions): MotorLossCoefficients {
  const { peakPower } = readOptions("scaleMotor", options, { peakPower: { unit: "W", above: 0 } }, ["motor"]);
  const motor = readMotor("motor", options.motor);
  if (motor.peakPower === undefined) {
    throw new InputError("INCONSISTENT", "motor must say its peakPower to be scaled: give it in W", { name: "motor" });
  }
  const size = peakPower / motor.peakPower;
  return Object.freeze({
    ...motor,
    ...noteOfSize(motor, size),
    copper: motor.copper / size,
    iron: motor.iron * size,
    windage: motor.windage * size,
    constant: motor.constant * size,
    peakPower,
  });
}

/** Beyond this a machine is another one, not a longer one: common practice, no source. */
const FAR = 1.5;

function noteOfSize({ note, peakPower }: MotorLossCoefficients, size: number): { readonly note?: string } {
  if (size <= FAR && size >= 1 / FAR) return {};
  const first = note ?? `a machine of ${Number((peakPower as number) / 1000).toPrecision(3)} kW`;
  const many = size > 1 ? "many" : "few";
  return {
    note:
      `${first}; scaled to ${Number(size.toPrecision(2))} times its size, its windage and constant loss with it, which is too ${many} watts at ` +
      `part load and high speed: consumption comes out too ${size > 1 ? "high" : "low"}`,
  };
}

/** A checked copy of a motor. @internal */
export function readMotor(name: string, given: unknown): MotorLossCoefficients {
  const rule = { unit: "1", atLeast: 0 } as const;
  const motor = given as MotorLossCoefficients;
  const read = readOptions(
    name,
    motor,
    {
      ...{ copper: rule, iron: rule, windage: rule, constant: rule },
      peakPower: { unit: "1", above: 0, optional: true },
    },
    ["note?", "source?"],
  );
  // As a plain number each: a ratio with a unit would pass, and be no number in the loops.
  for (const [key, value] of Object.entries(read)) {
    if (value !== undefined) readNumber(`${name}.${key}`, value, { unit: "1" });
  }
  return Object.freeze({ ...motor, ...read });
}
