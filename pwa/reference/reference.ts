/** The API page: the service's own OpenAPI document, shown by a viewer that it serves itself. */
import SwaggerUI from "swagger-ui-dist/swagger-ui-es-bundle.js";
import "swagger-ui-dist/swagger-ui.css";

SwaggerUI({ url: "/api/v1/openapi.json", dom_id: "#reference", deepLinking: true });
