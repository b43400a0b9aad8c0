/** The service's record endpoints, typed from its own OpenAPI document. */
import createClient from "openapi-fetch";
import type { paths } from "../generated/api";
import { lapse, pairing } from "./pairing.ts";
import type { Kind, Records } from "./records.ts";

const PAGE = 500;
export const client = createClient<paths>({ baseUrl: location.origin });

const BEARER = "Bearer ";
client.use({
  onRequest({ request }) {
    if (pairing.value) request.headers.set("Authorization", BEARER + pairing.value.token);
    return request;
  },
  onResponse({ request, response }) {
    const sent = request.headers.get("Authorization");
    if (response.status === 401 && sent) lapse(sent.slice(BEARER.length));
  },
});

type Puts = { [K in Kind]: (id: string, body: Omit<Records[K], "id">) => Promise<Answered> };
type Answered = { response: Response; error?: unknown };

const puts: Puts = {
  engines: (id, body) => client.PUT("/api/v1/engines/{id}", { params: { path: { id } }, body }),
  drives: (id, body) => client.PUT("/api/v1/drives/{id}", { params: { path: { id } }, body }),
  chains: (id, body) => client.PUT("/api/v1/chains/{id}", { params: { path: { id } }, body }),
  "gear-sets": (id, body) =>
    client.PUT("/api/v1/gear-sets/{id}", { params: { path: { id } }, body }),
  builds: (id, body) => client.PUT("/api/v1/builds/{id}", { params: { path: { id } }, body }),
  entries: (id, body) => client.PUT("/api/v1/entries/{id}", { params: { path: { id } }, body }),
  readings: (id, body) => client.PUT("/api/v1/readings/{id}", { params: { path: { id } }, body }),
};

export interface PutAnswer {
  status: number;
  problem: unknown;
}

export async function putRecord<K extends Kind>(kind: K, record: Records[K]): Promise<PutAnswer> {
  const { id, ...body } = record;
  const { response, error } = await puts[kind](id, body);
  return { status: response.status, problem: error };
}

export interface Page<K extends Kind> {
  items: Records[K][];
  next: string | null;
}

/** One page of the service's list, from the record after the one named. */
export async function pullPage<K extends Kind>(kind: K, after: string | null): Promise<Page<K>> {
  const init = { params: { query: after === null ? { limit: PAGE } : { limit: PAGE, after } } };
  const path: `/api/v1/${Kind}` = `/api/v1/${kind}`;
  const { data, response } = await client.GET(path, init);
  if (!data) throw new Error(`The service answered ${response.status}`);
  // What the service adds for itself is not ours to keep, nor to send back.
  const records = data.items.map(({ version: _version, received_at: _at, ...record }) => record);
  const items = records.filter((record) => !("calc" in record && record.calc === "fit"));
  return { items: items as unknown as Records[K][], next: data.next };
}
