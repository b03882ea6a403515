// What is a battery or load on board for: to crank an engine for seconds, or to serve the house for hours?
#pragma once

namespace bankwright {

enum class Role { start, house }; // `role = "start" | "house"`

} // namespace bankwright
