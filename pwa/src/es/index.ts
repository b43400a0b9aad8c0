/** Every word in Spanish: of the screens by the names of their files, and of the core by its phrases. */
import common from "./core/common.json" with { type: "json" };
import { home } from "./home.ts";

export const pack: Record<string, unknown> = { home };

export const phrases: Record<string, string> = { ...common };
