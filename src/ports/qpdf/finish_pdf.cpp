#include "ports/qpdf/finish_pdf.h"

// The library asks which of its two pointer types its user knows: only the standard one.
#define POINTERHOLDER_TRANSITION 4

#include <memory>
#include <qpdf/Buffer.hh>
#include <qpdf/QPDF.hh>
#include <qpdf/QPDFObjectHandle.hh>
#include <qpdf/QPDFWriter.hh>

#include "base/require.h"

namespace rimehaul::ports::qpdf {

namespace {

std::string xml_text(const std::string& text) {
  std::string safe;
  for (const char letter : text) {
    switch (letter) {
      case '&':
        safe += "&amp;";
        break;
      case '<':
        safe += "&lt;";
        break;
      case '>':
        safe += "&gt;";
        break;
      default:
        safe += letter;
    }
  }
  return safe;
}

/// XMP (ISO 16684-1) with title and language.
std::string xmp_of(const PdfFacts& facts) {
  const std::string title = xml_text(facts.title);
  return "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
         "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">"
         "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">"
         "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\">"
         "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">" +
         title +
         "</rdf:li></rdf:Alt></dc:title>"
         "<dc:language><rdf:Bag><rdf:li>" +
         xml_text(facts.language) +
         "</rdf:li></rdf:Bag></dc:language>"
         "</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"w\"?>";
}

/// Walks the structure tree in reading order and gives each figure its words.
class FigureWords {
 public:
  explicit FigureWords(const std::vector<std::string>& words) : words_{words} {}

  void give(QPDFObjectHandle element) {
    if (element.isArray()) {
      for (auto& part : element.getArrayAsVector()) {
        give(part);
      }
      return;
    }
    if (!element.isDictionary()) {
      return;
    }
    QPDFObjectHandle role = element.getKey("/S");
    if (role.isName() && role.getName() == "/Figure") {
      base::require(given_ < words_.size(), "every figure has its words");
      element.replaceKey("/Alt", QPDFObjectHandle::newUnicodeString(words_[given_++]));
    }
    if (element.hasKey("/K")) {
      give(element.getKey("/K"));
    }
  }

  [[nodiscard]] bool all_given() const { return given_ == words_.size(); }

 private:
  const std::vector<std::string>& words_;
  std::size_t given_ = 0;
};

}  // namespace

std::string finish_pdf(const card::Printed& printed, const PdfFacts& facts) {
  QPDF pdf;
  pdf.processMemoryFile("drawn sheet", printed.bytes.data(), printed.bytes.size());
  QPDFObjectHandle root = pdf.getRoot();
  root.replaceKey("/Lang", QPDFObjectHandle::newUnicodeString(facts.language));
  QPDFObjectHandle view = QPDFObjectHandle::newDictionary();
  view.replaceKey("/DisplayDocTitle", QPDFObjectHandle::newBool(true));
  root.replaceKey("/ViewerPreferences", view);
  QPDFObjectHandle marked = QPDFObjectHandle::newDictionary();
  marked.replaceKey("/Marked", QPDFObjectHandle::newBool(root.hasKey("/StructTreeRoot")));
  root.replaceKey("/MarkInfo", marked);
  QPDFObjectHandle metadata = QPDFObjectHandle::newStream(&pdf, xmp_of(facts));
  metadata.getDict().replaceKey("/Type", QPDFObjectHandle::newName("/Metadata"));
  metadata.getDict().replaceKey("/Subtype", QPDFObjectHandle::newName("/XML"));
  root.replaceKey("/Metadata", pdf.makeIndirectObject(metadata));
  FigureWords figures{printed.figure_words};
  if (root.hasKey("/StructTreeRoot")) {
    figures.give(root.getKey("/StructTreeRoot"));
  }
  base::require(figures.all_given(), "all words belong to a figure");
  QPDFWriter writer{pdf};
  writer.setOutputMemory();
  writer.setDeterministicID(true);
  writer.setObjectStreamMode(qpdf_o_disable);
  writer.write();
  const std::unique_ptr<Buffer> bytes{writer.getBuffer()};
  return {reinterpret_cast<const char*>(bytes->getBuffer()), bytes->getSize()};
}

std::string library_version() {
  return std::string{"qpdf "} + QPDF::QPDFVersion();
}

}  // namespace rimehaul::ports::qpdf
