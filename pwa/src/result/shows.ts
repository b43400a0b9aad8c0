/** What a calculation gives for showing its result, on its bench and when it is saved. */
import type { ComponentType } from "preact";
import type { DriveFields, ReadingInput } from "../store/records.ts";
import type { LengthUnit } from "../units/parse.ts";
import type { Glance } from "./glance.ts";

export interface ShownProps<R> {
  result: R;
  /** What the core was asked. */
  input: ReadingInput;
  length: LengthUnit;
}

export interface PicturesProps<R> {
  /** Null while there is nothing to show but the drive. */
  result: R | null;
  input: ReadingInput | null;
  drive: DriveFields | null;
  length: LengthUnit;
}

export interface Shows<R> {
  glance(result: R, length: LengthUnit): Glance;
  /** Why, what to do next, what to mind. */
  Reasons: ComponentType<ShownProps<R>>;
  Pictures: ComponentType<PicturesProps<R>>;
  /** What stands behind it. */
  Details: ComponentType<ShownProps<R>>;
}
