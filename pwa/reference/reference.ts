/** The API page: the service's own OpenAPI document, shown by a viewer that it serves itself. */
import SwaggerUI from "swagger-ui-dist/swagger-ui-es-bundle.js";
import "swagger-ui-dist/swagger-ui.css";
import "./reference.css";

interface Operation {
  description?: string;
  "x-codeSamples"?: { lang: string; label: string; source: string }[];
}

const DOCUMENT = "/api/v1/openapi.json";

/** The viewer knows nothing of samples but shows descriptions: each goes below its operation's. */
function withSamples(text: string): string {
  const document: { paths: Record<string, Record<string, Operation>> } = JSON.parse(text);
  for (const operation of Object.values(document.paths).flatMap((path) => Object.values(path))) {
    const samples = (operation["x-codeSamples"] ?? []).map(
      ({ lang, label, source }) => `${label}:\n\n\`\`\`${lang.toLowerCase()}\n${source}\`\`\``,
    );
    if (samples.length > 0)
      operation.description = [operation.description, ...samples].filter(Boolean).join("\n\n");
  }
  return JSON.stringify(document);
}

SwaggerUI({
  url: DOCUMENT,
  dom_id: "#reference",
  deepLinking: true,
  responseInterceptor: (answer) => {
    if (answer.ok && answer.url.endsWith(DOCUMENT)) answer.text = withSamples(answer.text);
    return answer;
  },
});
