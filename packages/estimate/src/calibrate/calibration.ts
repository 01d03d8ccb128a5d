import type { Drivetrain, Fraction, LikelyCertificate } from "@tarewatt/roadload";
import type { EnergyPerDistance, Power, Quantity, Working } from "@tarewatt/units";
import type { LowLikelyHigh } from "../evidence/evidence.js";
import type { VehicleOfMaker } from "./compared.js";

/** A vehicle of the maker with its certified figures. */
export interface CertifiedComparator extends VehicleOfMaker {
  /** How it is called; no two comparators share a name. */
  readonly name: string;
  /** Unadjusted consumption on UDDS, energy at the wall: no label figure. */
  readonly city: Quantity<EnergyPerDistance>;
  /** Unadjusted consumption on HWFET, energy at the wall: no label figure. */
  readonly highway: Quantity<EnergyPerDistance>;
  /** Where its figures are from. */
  readonly source?: string | undefined;
}

/** Options of {@link calibrate}. */
export interface CalibrateOptions {
  /** Certified vehicles of one maker; none is allowed, and changes nothing. */
  readonly comparators: readonly CertifiedComparator[];
}

/** A number for each of the two results of a certificate. */
export interface CityAndHighway {
  /** On UDDS. */
  readonly city: number;
  /** On HWFET. */
  readonly highway: number;
}

/** What one comparator shows. */
export interface ComparatorCheck {
  /** Name as given. */
  readonly name: string;
  /** Source as given. */
  readonly source: string;
  /** Certified consumption over what was to be expected of it, maker unknown: 1.05 for 5 % more. */
  readonly certifiedOverExpected: CityAndHighway;
  /** How far it is believed to say something of the maker: 1 for one as expected, towards 0 for one that stands apart. */
  readonly trust: Fraction;
  /** Probability that a vehicle of the maker lies as far from what the others say of it, or farther. */
  readonly chance: Fraction;
  /** Whether that is so improbable that its figures, or whether it belongs here, should be looked at. */
  readonly odd: boolean;
}

/** How far comparators agree. */
export interface ComparatorAgreement {
  /**
   * Root mean square of their distances from what the others say, in standard deviations: near 1 for vehicles that differ as those
   * of one maker do. Left out for fewer than two.
   */
  readonly deviation?: number;
  /** The same in words. */
  readonly inWords: "nothing to agree" | "alone" | "closer than usual" | "as usual" | "farther apart than usual";
}

/** What one comparator does to each consumption, as a factor. */
export interface Pull extends CityAndHighway {
  /** Name of the comparator. */
  readonly name: string;
}

/** What the certificate of a vehicle of the maker will say. Made by a {@link Calibration}. */
export interface CalibratedCertificate extends LikelyCertificate {
  /** Both consumptions as evidence for a model of your own: 10th, 50th and 90th percentiles. */
  readonly evidence: {
    /** On UDDS, at the wall. */
    readonly city: LowLikelyHigh<Quantity<EnergyPerDistance>>;
    /** On HWFET, at the wall. */
    readonly highway: LowLikelyHigh<Quantity<EnergyPerDistance>>;
  };
  /** What the maker is found to differ by from a typical one, as evidence; drawn apart, the two forget that one makes up for the other. */
  readonly learnt: {
    /** Factor on all that is drawn from the wall. */
    readonly factor: LowLikelyHigh<number>;
    /** Standing power at the battery beyond the typical: negative for less. */
    readonly standingPower: LowLikelyHigh<Quantity<Power>>;
  };
  /** The likely drivetrain with both in it, to drive anything else with: with `accessories` and `chargingEfficiency` below. */
  readonly drivetrain: Drivetrain;
  /** Base load that belongs to the drivetrain. */
  readonly accessories: Quantity<Power>;
  /** Charging efficiency that belongs to the drivetrain. */
  readonly chargingEfficiency: number;
  /** What each comparator does to the consumptions, as a factor: their product is what all of them do. */
  readonly pulls: readonly Pull[];
  /** Standard deviation that the comparators leave, per the one without them, 0 to 1. */
  readonly left: CityAndHighway;
  /** The steps, from each comparator to the consumptions and their intervals. */
  working(): Working;
}

/** What certificates of one maker say. Made by {@link calibrate}. */
export interface Calibration {
  /** Each comparator beside the others, in the order given. */
  readonly comparators: readonly ComparatorCheck[];
  /** How far they agree. */
  readonly agreement: ComparatorAgreement;
  /** What a reader should doubt; empty when there is nothing. */
  readonly warnings: readonly string[];
  /**
   * What the certificate of another vehicle of the maker will say.
   * @param vehicle - model year, road load, rated power, years of experience
   * @throws what {@link calibrate} throws for a comparator
   */
  likelyCertificate(vehicle: VehicleOfMaker): CalibratedCertificate;
}
