/*
 * Write this phone's time zone, by its IANA name, into the field just before this script. It is a plain script, and
 * stands before the button, so that the form cannot be sent until the zone is in it.
 */
document.currentScript.previousElementSibling.value ||= Intl.DateTimeFormat().resolvedOptions().timeZone ?? "";
