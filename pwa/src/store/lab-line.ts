/** A question to the service that waits until it is answered. No network and no wiring here. */
import { computed, type Signal, signal } from "@preact/signals";
import type { Database } from "./db.ts";
import { fateOf } from "./outbox.ts";
import type { Refusal } from "./records.ts";

/** none: nothing was asked yet. answered: the answer is to the question asked last. */
type LabState = "none" | "waiting" | "answered" | "refused";

/** What is kept of one subject: the question asked last, and the last answer there was. */
interface KeptLab<Q, A> {
  asked: { question: Q; at: string } | null;
  answered: { question: Q; answer: A; at: string } | null;
  /** Why the service will not answer what was asked last. */
  refusal: Refusal | null;
  /** Whether what was asked last still has to be answered. */
  open: boolean;
}

export interface Reply {
  /** 0 if the service was not reached. */
  status: number;
  data: unknown;
  problem: unknown;
}

/** Where a line keeps its state, whom it asks, and what time it is. */
export interface Around {
  db(): Promise<Database>;
  send(name: string, question: unknown): Promise<Reply>;
  now(): string;
}

export const PREFIX = "asked:";
const keyOfLab = (name: string, about: string) => `${PREFIX}${name}:${about}`;

/** One subject of one question: kept before it is sent, answered once, asked again until then. */
export class LabLine<Q, A> {
  readonly kept: Signal<KeptLab<Q, A>> = signal<KeptLab<Q, A>>({
    asked: null,
    answered: null,
    refusal: null,
    open: false,
  });
  readonly state = computed<LabState>(() => {
    const { asked, answered, refusal, open } = this.kept.value;
    if (open) return "waiting";
    if (refusal) return "refused";
    return asked && answered ? "answered" : "none";
  });
  private readonly name: string;
  private readonly key: string;
  private readonly around: Around;
  private readonly loaded: Promise<void>;
  private sending: Promise<void> | null = null;

  constructor(name: string, about: string, around: Around) {
    this.name = name;
    this.key = keyOfLab(name, about);
    this.around = around;
    this.loaded = this.load();
  }

  /** Resolves once what was kept before is known. */
  ready(): Promise<void> {
    return this.loaded;
  }

  /** Keeps the question, and only then sends it. What was answered stays until the next answer. */
  async ask(question: Q): Promise<void> {
    await this.loaded;
    const asked = { question, at: this.around.now() };
    await this.put({ ...this.kept.value, asked, refusal: null, open: true });
    await this.again();
  }

  /** Asks what is still open; nothing if nothing is, or if it is being asked already. */
  async again(): Promise<void> {
    await this.loaded;
    this.sending ??= this.sendOpen().finally(() => {
      this.sending = null;
    });
    await this.sending;
  }

  private async load(): Promise<void> {
    const found = await (await this.around.db()).get("kept", this.key);
    if (found) this.kept.value = found as KeptLab<Q, A>;
  }

  private async sendOpen(): Promise<void> {
    for (;;) {
      const { asked, open } = this.kept.value;
      if (!open || !asked) return;
      const reply = await this.around.send(this.name, asked.question);
      // Another question was asked meanwhile: this answer is to none that is wanted.
      if (this.kept.value.asked !== asked) continue;
      const fate = fateOf(reply.status, reply.problem);
      if (fate.kind === "later") return;
      // In one go, so that a question is never closed without its answer.
      const settled = { ...this.kept.value, open: false };
      if (fate.kind === "refused") await this.put({ ...settled, refusal: fate.refusal });
      else {
        const { question } = asked;
        const answered = { question, answer: reply.data as A, at: this.around.now() };
        await this.put({ ...settled, answered });
      }
    }
  }

  private async put(now: KeptLab<Q, A>): Promise<void> {
    // Shown at once, so that an answer to an older question is not taken while this is written.
    this.kept.value = now;
    await (await this.around.db()).put("kept", now, this.key);
  }
}
