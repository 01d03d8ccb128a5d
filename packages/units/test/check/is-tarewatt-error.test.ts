import { describe, expect, it } from "vitest";
import { InputError, isTarewattError, QuantityError, TarewattError } from "../../src/index.js";

describe("an error of this library", () => {
  it("is known by what it holds, not by its class, so that copies of the package agree", () => {
    class InputErrorOfAnotherCopy extends Error {
      override readonly name = "InputError";
      readonly code = "NEGATIVE";
      readonly details = {};
    }
    const own = [
      new TarewattError("X", "x"),
      new QuantityError("NOT_FINITE", "x"),
      new InputError("NEGATIVE", "x"),
      new InputErrorOfAnotherCopy("x"),
    ];
    expect(own.map(isTarewattError)).toEqual([true, true, true, true]);
  });

  it("is nothing else, whatever was thrown", () => {
    const { proxy, revoke } = Proxy.revocable({}, {});
    revoke();
    const coded = Object.assign(new Error("x"), { code: "ENOENT" });
    const alike = { name: "InputError", code: "NEGATIVE", details: {} };
    for (const thrown of [undefined, null, "x", 5, {}, new Error("x"), coded, alike, proxy]) {
      expect(isTarewattError(thrown)).toBe(false);
    }
  });
});
