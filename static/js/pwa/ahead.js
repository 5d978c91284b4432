/** What any page may yet want of the phone, fetched while there is a network: for where no worker keeps it. */
import "../journal/courier.js";
import "../journal/moments.js";
import "../journal/status.js";
import "../reminders/night.js";
