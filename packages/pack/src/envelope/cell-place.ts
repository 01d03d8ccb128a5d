import type { Block } from "./block.js";

/**
 * Where a cell is, in mm from the lower corner of the space inside the reserves: x along the vehicle, y across, z up. Corner
 * and sizes are those of the box around the cell; of a cylinder, two of them are its diameter, and the axis is along the third.
 */
export interface CellPlace {
  /** Least distance from the end. */
  readonly x: number;
  /** Least distance from the side. */
  readonly y: number;
  /** Height of its lower face. */
  readonly z: number;
  /** Size along the vehicle. */
  readonly length: number;
  /** Size across. */
  readonly width: number;
  /** Size upwards. */
  readonly height: number;
}

interface Layers {
  readonly layers: number;
  readonly up: number;
  readonly pitch: number;
}

/** @internal The place of every cell of blocks, layer by layer. */
export function placesOf(blocks: readonly Block[], { layers, up, pitch }: Layers): readonly CellPlace[] {
  const places: CellPlace[] = [];
  for (let layer = 0; layer < layers; layer++) {
    const z = layer * pitch;
    for (const { x: x0, y: y0, countX, countY, pitchX, pitchY, sizeX, sizeY } of blocks) {
      for (let row = 0; row < countY; row++) {
        const y = y0 + row * pitchY;
        for (let column = 0; column < countX; column++) {
          const x = x0 + column * pitchX;
          // Thousands of them: one literal each, without spreading.
          places.push(Object.freeze({ x, y, z, length: sizeX, width: sizeY, height: up }));
        }
      }
    }
  }
  return Object.freeze(places);
}
