import type { LikelyCertificate } from "@tarewatt/roadload";
import { type EnergyPerDistance, type Power, type Quantity, q } from "@tarewatt/units";
import { describe, expectTypeOf, it } from "vitest";
import { type CalibratedCertificate, calibrate, type Evidence, type VehicleOfMaker } from "../../src/index.js";

declare const vehicle: VehicleOfMaker;

describe("a calibration", () => {
  it("predicts what likelyCertificate predicts, and evidence", () => {
    const { likelyCertificate } = calibrate({ comparators: [] });
    expectTypeOf(likelyCertificate).returns.toEqualTypeOf<CalibratedCertificate>();
    expectTypeOf<CalibratedCertificate>().toExtend<LikelyCertificate>();
    expectTypeOf<CalibratedCertificate["evidence"]["city"]>().toExtend<Evidence<Quantity<EnergyPerDistance>>>();
    expectTypeOf<CalibratedCertificate["learnt"]["standingPower"]>().toExtend<Evidence<Quantity<Power>>>();
  });

  it("takes consumption, not its inverse, and both of them", () => {
    const whole = { ...vehicle, name: "car", city: q("220 Wh/mi"), highway: q("240 Wh/mi") };
    calibrate({ comparators: [whole] });
    // @ts-expect-error a distance per energy is no consumption
    calibrate({ comparators: [{ ...whole, city: q("4 mi/kWh") }] });
    // @ts-expect-error one result is no certificate
    calibrate({ comparators: [{ ...vehicle, name: "car", city: q("220 Wh/mi") }] });
  });
});
