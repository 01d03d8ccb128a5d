import type {
  Area,
  Density,
  Force,
  ForcePerSpeed,
  ForcePerSpeedSquared,
  Mass,
  Power,
  Quantity,
  Speed,
  Step,
  Temperature,
} from "@tarewatt/units";
import type { Fraction } from "../fraction.js";
import type { Loss } from "./loss.js";

/** Coefficients of a road load F = A + B·v + C·v² on a level road in still air. */
export interface RoadLoadCoefficients {
  /** Constant term A. */
  readonly constant: Quantity<Force>;
  /** Linear term B. */
  readonly linear: Quantity<ForcePerSpeed>;
  /** Quadratic term C. */
  readonly quadratic: Quantity<ForcePerSpeedSquared>;
}

/** Where on the road a load is asked for. */
export interface RoadOptions {
  /** Rise over run, positive uphill: 0.06 for 6 %; level when left out. */
  readonly grade?: Fraction | undefined;
}

/** What both forms of a {@link RoadLoad} share. */
export interface AnyRoadLoad {
  /** Mass that is moved, with its load. */
  readonly mass: Quantity<Mass>;
  /** Mass with the equivalent mass of the rotating parts: what has to be accelerated. */
  readonly inertiaMass: Quantity<Mass>;
  /** Equivalent mass of the rotating parts as part of the mass. */
  readonly rotatingMassFraction: number;
  /** The load as coefficients. */
  readonly coefficients: RoadLoadCoefficients;
  /** The losses that the load holds; a drivetrain must not hold them again. */
  readonly holds: readonly Loss[];
  /** What a reader should doubt, such as a figure that no vehicle is known to have; empty when there is nothing. */
  readonly warnings: readonly string[];
  /**
   * Part of the mass that is towed, when something is: it rolls on tyres of its own, so its weight gives the driven tyres no
   * traction. Made by {@link withAddOns}.
   */
  readonly towedMass?: Quantity<Mass>;
  /** What is dangerous about the load, such as towing; left out when there is nothing. */
  readonly cautions?: readonly string[];
}

/** A road load from drag area, rolling resistance and mass. Made by {@link roadLoad}. */
export interface PhysicalRoadLoad extends AnyRoadLoad {
  /** Tells the two forms apart. */
  readonly form: "physical";
  /** What the mass consists of, in the words of the caller: "curb + driver" for example. */
  readonly massBasis?: string;
  /** Drag area. */
  readonly dragArea: Quantity<Area>;
  /** Drag coefficient, when the drag area was given by it. */
  readonly dragCoefficient?: number;
  /** Frontal area, when the drag area was given by it. */
  readonly frontalArea?: Quantity<Area>;
  /** Rolling resistance per load. */
  readonly rollingResistanceCoefficient: number;
  /** What the coefficients refer to. */
  readonly conditions: {
    /** Density of the air. */
    readonly airDensity: Quantity<Density>;
    /** Reference temperature, when the load was read from certified coefficients that say it. */
    readonly temperature?: Quantity<Temperature>;
    /** Procedure that the coefficients come from, in words, when the load was read from such. */
    readonly standard?: string;
  };
  /** What each coefficient is. */
  readonly parts: {
    /** What the constant coefficient is. */
    readonly constant: "rolling resistance";
    /** What the quadratic coefficient is. */
    readonly quadratic: "aerodynamic drag";
  };
  /**
   * Forces and power at a steady speed.
   * @param speed - 0 to 150 m/s
   * @param options - grade
   * @throws InputError `OUT_OF_RANGE`, `NEGATIVE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
   */
  at(speed: Quantity<Speed>, options?: RoadOptions): PhysicalRoadLoadAt;
}

/** Conditions that certified coefficients refer to. */
export interface CertifiedConditions {
  /** Test mass, or equivalent test weight, of the certificate. */
  readonly testMass: Quantity<Mass>;
  /** Density of the reference air: see `referenceAir`. */
  readonly airDensity?: Quantity<Density>;
  /** Reference temperature. */
  readonly temperature?: Quantity<Temperature>;
  /** Procedure that the coefficients come from, in words. */
  readonly standard?: string;
}

/** A road load from certified coefficients. Made by {@link certifiedRoadLoad}. */
export interface CertifiedRoadLoad extends AnyRoadLoad {
  /** Tells the two forms apart. */
  readonly form: "certified";
  /** What the coefficients refer to. */
  readonly conditions: CertifiedConditions;
  /** Steady wind against the vehicle that the coefficients hold, negative from behind; still air when left out. */
  readonly headWind?: Quantity<Speed>;
  /**
   * Forces and power at a steady speed.
   * @param speed - 0 to 150 m/s
   * @param options - grade
   * @throws InputError `OUT_OF_RANGE`, `NEGATIVE`, `NOT_A_FRACTION`, `WRONG_DIMENSION`, `UNKNOWN_OPTION`
   */
  at(speed: Quantity<Speed>, options?: RoadOptions): CertifiedRoadLoadAt;
}

/** A road load, told apart by `form`. */
export type RoadLoad = PhysicalRoadLoad | CertifiedRoadLoad;

/** What both forms of {@link RoadLoadAt} share. */
export interface AnyRoadLoadAt {
  /** Part of the weight along the road, negative downhill. */
  readonly grade: Quantity<Force>;
  /** Force at the wheels that holds the speed; negative when the vehicle must be held back. */
  readonly total: Quantity<Force>;
  /** Power at the wheels that holds the speed. */
  readonly power: Quantity<Power>;
  /** How the numbers came about. */
  working(): Step[];
}

/** Forces of a {@link PhysicalRoadLoad} at a speed. */
export interface PhysicalRoadLoadAt extends AnyRoadLoadAt {
  /** Tells the two forms apart. */
  readonly form: "physical";
  /** Rolling resistance. */
  readonly rolling: Quantity<Force>;
  /** Aerodynamic drag in still air. */
  readonly aerodynamic: Quantity<Force>;
}

/** Forces of a {@link CertifiedRoadLoad} at a speed. */
export interface CertifiedRoadLoadAt extends AnyRoadLoadAt {
  /** Tells the two forms apart. */
  readonly form: "certified";
  /** Constant term, times the cosine of the road's angle. */
  readonly constant: Quantity<Force>;
  /** Linear term at this speed. */
  readonly linear: Quantity<Force>;
  /** Quadratic term at this speed. */
  readonly quadratic: Quantity<Force>;
}

/** Forces at a speed, told apart by `form`. */
export type RoadLoadAt = PhysicalRoadLoadAt | CertifiedRoadLoadAt;
