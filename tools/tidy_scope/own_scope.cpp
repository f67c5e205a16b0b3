// A plugin for clang-tidy-19: its checks match only what is declared outside system headers.
//
// clang-tidy 19 walks every declaration of a translation unit, those of the libraries' headers too,
// for each of its checks, and then drops what it found there. On our sources that is nine tenths
// of the time. The findings are the same (docs/decisions/0018-linter-scope.md says how that was
// tried); tools/tidy.sh builds this and loads it, and reads without it where it can't be built.

#include "clang/AST/ASTConsumer.h"
#include "clang/AST/ASTContext.h"
#include "clang/AST/Decl.h"
#include "clang/Basic/SourceManager.h"
#include "clang/Frontend/CompilerInstance.h"
#include "clang/Frontend/FrontendAction.h"
#include "clang/Frontend/FrontendPluginRegistry.h"

#include <memory>
#include <string>
#include <vector>

namespace {

class OwnScope : public clang::ASTConsumer {
 public:
  void HandleTranslationUnit(clang::ASTContext& context) override {
    const clang::SourceManager& sources = context.getSourceManager();
    std::vector<clang::Decl*> own;
    for (clang::Decl* declared : context.getTranslationUnitDecl()->decls()) {
      const clang::SourceLocation at = sources.getExpansionLoc(declared->getLocation());
      if (at.isValid() && !sources.isInSystemHeader(at)) own.push_back(declared);
    }
    context.setTraversalScope(own);
  }
};

class BeforeTheChecks : public clang::PluginASTAction {
 protected:
  std::unique_ptr<clang::ASTConsumer> CreateASTConsumer(clang::CompilerInstance& /*compiler*/,
                                                        llvm::StringRef /*file*/) override {
    return std::make_unique<OwnScope>();
  }
  bool ParseArgs(const clang::CompilerInstance& /*compiler*/,
                 const std::vector<std::string>& /*arguments*/) override {
    return true;
  }
  ActionType getActionType() override { return AddBeforeMainAction; }
};

const clang::FrontendPluginRegistry::Add<BeforeTheChecks> k_registered(
    "own-scope", "match only what is declared outside system headers");

}  // namespace
