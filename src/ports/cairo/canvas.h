// Paper to draw on: text that folds and is never cut, lines, areas, pictures, and their tags.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "card/printed.h"
#include "ports/cairo/palette.h"

namespace rimehaul::ports::cairo {

/// A place on a page in points (1/72 inch): to the right and down from its upper left corner.
struct Spot {
  double x_pt = 0.0;
  double y_pt = 0.0;
};

struct Box {
  double left_pt = 0.0;
  double top_pt = 0.0;
  double width_pt = 0.0;
  double height_pt = 0.0;

  [[nodiscard]] double right_pt() const { return left_pt + width_pt; }
  [[nodiscard]] double bottom_pt() const { return top_pt + height_pt; }
  [[nodiscard]] Box inset(double each_side_pt) const {
    return {left_pt + each_side_pt, top_pt + each_side_pt, width_pt - 2 * each_side_pt,
            height_pt - 2 * each_side_pt};
  }
  [[nodiscard]] bool meets(const Box& other) const {
    return left_pt < other.right_pt() && other.left_pt < right_pt() && top_pt < other.bottom_pt() &&
           other.top_pt < bottom_pt();
  }
};

enum class Face { text, mono };
enum class Weight { regular, bold };
enum class Align { left, centre, right };

/// How text looks. Nothing that people must read is smaller than kSmallest_pt.
struct Lettering {
  double size_pt = 9.0;
  Weight weight = Weight::regular;
  Align align = Align::left;
  Face face = Face::text;
  Colour colour = kInk;
};
inline constexpr double kSmallest_pt = 8.0;

/// Text in a column; it folds at the width, in the midst of a word where nothing else is left.
struct Paragraph {
  std::string_view text;
  Lettering lettering{};
  double width_pt = 0.0;
};

struct Stroke {
  double width_pt = 1.0;
  Colour colour = kInk;
  std::vector<double> dashes_pt{};  ///< on, off, ...; empty: solid
};

/// A grey picture, row by row from the top; 0 black, 255 white.
struct GreyPicture {
  int columns = 0;
  int rows = 0;
  std::vector<unsigned char> greys;
};

/// What is being made, for its metadata.
struct DocumentFacts {
  std::string title;
  std::string made;  ///< RFC 3339
};

enum class Form { pdf, svg };

/// Size of a page. A4 stands upright.
struct PageSize {
  double width_pt = 595.276;
  double height_pt = 841.890;
};

/// One document being drawn, page after page. An SVG has one page.
class Canvas {
 public:
  /// Throws BadInput when the drawing library fails, which then says why.
  Canvas(Form form, PageSize size, const DocumentFacts& facts);
  ~Canvas();
  Canvas(const Canvas&) = delete;
  Canvas& operator=(const Canvas&) = delete;

  [[nodiscard]] PageSize size() const { return size_; }
  void next_page();

  /// Height that a paragraph will take.
  [[nodiscard]] double height_of(const Paragraph& paragraph) const;
  /// Width of one line of text that is not folded.
  [[nodiscard]] double width_of(std::string_view text, const Lettering& lettering) const;
  /// Whether the fonts at hand have every letter of a text; one that none has is drawn as a box.
  [[nodiscard]] bool has_letters(std::string_view text) const;
  /// Writes a paragraph from its upper left corner; returns its height.
  double write(Spot corner, const Paragraph& paragraph);
  /// One line of text centred on a spot, with a pale edge around its letters, so that it can be
  /// read on top of a drawing.
  void label(Spot middle, std::string_view text, const Lettering& lettering);

  void line(const std::vector<Spot>& spots, const Stroke& stroke);
  /// A closed area; no stroke when its width is 0.
  void area(const std::vector<Spot>& corners, Colour fill, const Stroke& edge = {.width_pt = 0.0});
  void box(const Box& box, Colour fill, const Stroke& edge = {.width_pt = 0.0});
  void disc(Spot middle, double radius_pt, Colour fill, const Stroke& edge = {.width_pt = 0.0});
  void picture(const GreyPicture& picture, const Box& box);
  /// Draws only within a box until the clip ends.
  class Clip {
   public:
    Clip(Canvas& canvas, const Box& box);
    ~Clip();
    Clip(const Clip&) = delete;
    Clip& operator=(const Clip&) = delete;

   private:
    Canvas* canvas_;
  };

  /// A structure element around what is drawn while it lives: "H1", "P", "Table", "TR", "TD".
  class Tag {
   public:
    Tag(Canvas& canvas, const char* name);
    /// A figure with the words that stand in for it.
    static Tag figure(Canvas& canvas, std::string words);
    /// What links of this document lead to. Names are of small letters, digits and blanks; an empty
    /// one makes no place, or no link.
    static Tag place(Canvas& canvas, const std::string& name);
    /// A click on what is drawn goes to the place of that name, which must be drawn somewhere.
    static Tag link(Canvas& canvas, const std::string& name);
    ~Tag();
    Tag(const Tag&) = delete;
    Tag& operator=(const Tag&) = delete;

   private:
    Tag(Canvas& canvas, const char* name, const std::string& attributes);

    Canvas* canvas_;
    const char* name_;  ///< nothing: no element
  };

  /// Ends the document. Nothing can be drawn afterwards.
  [[nodiscard]] card::Printed finish();

 private:
  struct Handles;
  std::unique_ptr<Handles> handles_;
  Form form_;
  PageSize size_;
  std::vector<std::string> figure_words_;
};

}  // namespace rimehaul::ports::cairo
