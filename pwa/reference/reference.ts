/** The API page: the service's own OpenAPI document, shown by a viewer that it serves itself. */
import SwaggerUI from "swagger-ui-dist/swagger-ui-es-bundle.js";
import "swagger-ui-dist/swagger-ui.css";

interface Operation {
  description?: string;
  "x-codeSamples"?: { lang: string; label: string; source: string }[];
}

/** The viewer shows descriptions, and knows nothing of samples: each goes below its operation's. */
function withSamples(operation: Operation): void {
  const samples = (operation["x-codeSamples"] ?? []).map(
    ({ lang, label, source }) => `${label}:\n\n\`\`\`${lang.toLowerCase()}\n${source}\`\`\``,
  );
  operation.description = [operation.description, ...samples].filter(Boolean).join("\n\n");
}

const address = "/api/v1/openapi.json";
const spec: { paths: Record<string, Record<string, Operation>> } = await (
  await fetch(address)
).json();
for (const path of Object.values(spec.paths)) Object.values(path).forEach(withSamples);
SwaggerUI({ spec, dom_id: "#reference", deepLinking: true });
