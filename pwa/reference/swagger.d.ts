declare module "swagger-ui-dist/swagger-ui-es-bundle.js" {
  interface Answer {
    ok: boolean;
    url: string;
    text: string;
  }
  export default function SwaggerUI(options: {
    url: string;
    dom_id: string;
    deepLinking?: boolean;
    responseInterceptor?: (answer: Answer) => Answer;
  }): void;
}
