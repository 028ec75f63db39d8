// Attributes of the tags that places and links of a document carry.
#pragma once

#include <string>
#include <string_view>

namespace rimehaul::ports::cairo {

/// The attribute that names a place: key='name'. The drawing library's own quoting is not relied
/// upon: names are of small letters, digits and blanks. Throws OurFault for any other.
std::string tag_attribute(std::string_view key, std::string_view name);

}  // namespace rimehaul::ports::cairo
