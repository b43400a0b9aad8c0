import type { text as deviceText, ROLES } from "../device/strings.ts";
import type { Role } from "../store/pairing.ts";
import type { Said } from "../words/words.ts";

export const roles: Said<typeof ROLES> = [
  { label: "Guarda registros" },
  { label: "Solo mira" },
  { label: "También vincula y revoca" },
];

const AS: Record<Role, string> = {
  owner: "propietario: guarda registros, y vincula y revoca otros dispositivos",
  member: "miembro: guarda registros",
  reader: "lector: ve los registros del taller, y lo que se guarda en él se queda en él",
};

export const text: Said<typeof deviceText> = {
  title: "Este dispositivo",
  none: "Solo en este teléfono: vincúlelo con el taller para tener allí una copia y ver los registros del taller. Todo funciona también sin ello.",
  lapsed: (shop) =>
    `“${shop}” ya no conoce este dispositivo. No se ha perdido nada: vincúlelo de nuevo, y lo que espera irá allí.`,
  paired: (shop, name, role) => `Vinculado con “${shop}” como “${name}”, ${AS[role]}.`,
  pairTitle: "Vincular este dispositivo",
  code: "Código de vinculación",
  codeHint: "De un dispositivo propietario, o de la orden midspan pair donde funciona el servicio.",
  codeNeed: "10 letras y cifras, como ABCDE-23456",
  name: "Nombre de este dispositivo",
  nameHint: "Con el que lo conoce el taller, para revocarlo si se pierde.",
  guess: { phone: "Teléfono", browser: "Navegador" },
  pair: "Vincular este dispositivo",
  pairing: "Vinculando",
  noService: "No se llega al servicio. No ha cambiado nada; inténtelo de nuevo cerca de él.",
  cannotScan: "Este navegador no puede leer códigos. Escriba el código.",
  pointAt: "Apunte la cámara al código de vinculación",
  unpair: "Desvincular este dispositivo",
  unpairNote: "Sus registros se quedan en él; el taller conserva su copia.",
  unpairWaits: (count) =>
    count === 0
      ? ""
      : `${count === 1 ? "1 registro no ha" : `${count} registros no han`} llegado aún al taller. `,
  sure: "Sí, desvincular",
  sureRevoke: (name) => `Sí, revocar ${name}`,
  cancel: "Cancelar",
  devices: "Dispositivos del taller",
  thisOne: "este dispositivo",
  seen: (when) => `visto por última vez ${when}`,
  neverSeen: "no visto aún",
  roleShort: { owner: "propietario", member: "miembro", reader: "lector" },
  revoke: "Revocar",
  revokeNamed: (name) => `Revocar ${name}`,
  more: "Mostrar más",
  add: "Vincular otro dispositivo",
  newRole: "Qué puede hacer",
  newCode: "Crear un código de vinculación",
  codeLasts: (when) =>
    `Para un solo dispositivo, hasta las ${when}. Léalo con su cámara, o escríbalo.`,
};
