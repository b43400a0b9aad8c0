declare module "swagger-ui-dist/swagger-ui-es-bundle.js" {
  export default function SwaggerUI(options: {
    spec: object;
    dom_id: string;
    deepLinking?: boolean;
  }): void;
}
