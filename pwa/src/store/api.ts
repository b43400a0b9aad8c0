/** The service's record endpoints, typed from its own OpenAPI document. */
import createClient from "openapi-fetch";
import type { components, paths } from "../generated/api";
import { lapse, pairing } from "./pairing.ts";
import type { Batch, Result } from "./records.ts";

const PAGE = 200;
export const client = createClient<paths>({ baseUrl: location.origin });

const BEARER = "Bearer ";
client.use({
  onRequest({ request }) {
    if (pairing.value) request.headers.set("Authorization", BEARER + pairing.value.token);
    return request;
  },
  async onResponse({ request, response }) {
    const sent = request.headers.get("Authorization");
    if (response.status === 401 && sent) await lapse(sent.slice(BEARER.length));
  },
});

interface Answered<T> {
  status: number;
  data: T | null;
  problem: unknown;
}

/** Sends a batch as it was written, under its key. */
export async function sendBatch({ key, body }: Batch): Promise<Answered<Result[]>> {
  const { data, error, response } = await client.POST("/api/v1/sync", {
    params: { header: { "Idempotency-Key": `"${key}"` } },
    body: body as never,
    bodySerializer: (written: unknown) => written as string,
    headers: { "Content-Type": "application/json" },
  });
  return { status: response.status, data: data?.results ?? null, problem: error };
}

/** One page of what changed since a cursor. */
export async function pullPage(
  after: string | null,
): Promise<Answered<components["schemas"]["ChangesPage"]>> {
  const query = after === null ? { limit: PAGE } : { limit: PAGE, after };
  const { data, error, response } = await client.GET("/api/v1/changes", { params: { query } });
  return { status: response.status, data: data ?? null, problem: error };
}
