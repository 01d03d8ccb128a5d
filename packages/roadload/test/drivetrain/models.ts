import { q } from "@tarewatt/units";
import { type Battery, type Drivetrain, inductionMotor100kW, lossDrivetrain, scaleMotor } from "../../src/index.js";

/** A drivetrain of losses for examples, invented but for its motor. */
export const lossy: Drivetrain = lossDrivetrain({
  motor: scaleMotor({ motor: inductionMotor100kW, peakPower: q("150 kW") }),
  ...{ gearRatio: 9.5, wheelRadius: q("0.33 m"), spin: "here" },
  gears: { meshEfficiency: 0.97, spinTorque: q("0.5 N·m") },
  inverter: { efficiency: 0.98, standby: q("50 W") },
  ...{ maximumTorque: q("310 N·m"), maximumPower: q("150 kW") },
});

/** An invented battery of constant voltage and resistance: its charge is what flows, its loss I²R. */
export function plainBattery({
  energy = 75 * 3.6e6,
  volts = 350,
  ohms = 0.08,
  most = 200_000,
  mostCharge = 120_000,
} = {}): Battery {
  const current = (power: number) =>
    (volts - Math.sqrt(Math.max(0, volts * volts - 4 * ohms * power))) / (2 * ohms || Number.NaN);
  const amps = (power: number) => (ohms === 0 ? power / volts : current(power));
  return {
    name: "invented",
    lossPower: (power) => amps(power) ** 2 * ohms,
    stateOfChargeRate: (power) => -(amps(power) * volts) / energy,
    maximumDischargePower: (soc) => (soc > 0 ? most : 0),
    maximumChargePower: (soc) => (soc < 1 ? mostCharge : 0),
  };
}
