// How large is everything, and how far apart? All the measures that placing and routing go by, in px.
#pragma once

namespace bankwright::drawing::measures {

inline constexpr double margin = 24.0;
inline constexpr double header = 66.0; // bank's name and what is shown

// A battery from above: its posts lie inside, near the far edge.
inline constexpr double battery_width = 136.0;
inline constexpr double battery_height = 142.0;
inline constexpr double post_inset = 26.0; // from the side
inline constexpr double post_depth = 16.0; // from the edge
inline constexpr double post_reach = 18.0; // lugs lie side by side this far either way
inline constexpr double battery_gap = 60.0;

// What a screen shows without moving sideways, and about what a column of equipment takes of it, its labels included.
inline constexpr double screen = 1280.0;
inline constexpr double spine = 60.0; // between the batteries and the rest
inline constexpr double equipment_pitch = 285.0;

// A conductor's label, and a line that bears one: half a label fits on either side.
inline constexpr double label_width = 112.0;
inline constexpr double label_pitch = 54.0;
// Lines that bear none.
inline constexpr double line_pitch = 11.0;
inline constexpr double crowded_pitch = 4.2; // as close as they may come
inline constexpr double lug_pitch = 8.0;
inline constexpr double reserve = 64.0; // above each row of batteries, for leads to whatever is or will be joined

// Everything but batteries: its first terminal lies `anchor` below its top.
inline constexpr double anchor = 48.0;
inline constexpr double footer = 50.0; // below its last terminal
inline constexpr double device_width = 122.0;
inline constexpr double busbar_width = 92.0;
inline constexpr double connector_width = 150.0;
inline constexpr double load_width = 136.0;
inline constexpr double stub_pitch = 18.0; // between conductors that leave to the right
inline constexpr double terminal_half = 8.0;
inline constexpr double clearance = 5.0; // between the lines of different conductors that run side by side

} // namespace bankwright::drawing::measures
