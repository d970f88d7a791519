using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace PlankFit.Mutants;

/// <summary>Finds a mutant's expression in its file as it stands today, wherever its lines have moved to.</summary>
internal static class PlaceInSource
{
    /// <returns>Its place, or null and why it has none, with what to do.</returns>
    public static (TextSpan? Span, string Why) Of(Mutant mutant, string source, SyntaxNode root)
    {
        int[] ink =
        [
            .. Enumerable.Range(0, source.Length).Where(i => !char.IsWhiteSpace(source[i])),
        ];
        string squeezed = Squeezed(source),
            before = Squeezed(mutant.Before),
            was = Squeezed(mutant.Was),
            whole = before + was + Squeezed(mutant.After);
        int at = squeezed.IndexOf(whole, StringComparison.Ordinal);
        if (at < 0)
        {
            return (
                null,
                "what it looks for is no longer there; write how the line reads now, or take out the mutant if the code is gone"
            );
        }

        if (squeezed.IndexOf(whole, at + 1, StringComparison.Ordinal) >= 0)
        {
            return (
                null,
                "what it looks for is there more than once; write more of what stands around it"
            );
        }

        int first = at + before.Length;
        var span = TextSpan.FromBounds(ink[first], ink[first + was.Length - 1] + 1);
        SyntaxNode node = root.FindNode(span, getInnermostNodeForTie: true);
        return node.Span != span || node is not ExpressionSyntax
                ? (null, "what stands between ⟦ and ⟧ is not one whole expression; move the marks")
            : IsConstant(node)
                ? (
                    null,
                    "a constant cannot be switched while the program runs; choose another expression"
                )
            : SyntaxFactory.ParseExpression(mutant.Now) is var now
            && (now.ContainsDiagnostics || now.FullSpan.Length != mutant.Now.Length)
                ? (null, $"what is to be planted is not one whole expression: {mutant.Now}")
            : (span, "");
    }

    private static bool IsConstant(SyntaxNode node) =>
        node.Ancestors()
            .Any(a =>
                a
                    is AttributeSyntax
                        or ParameterSyntax
                        or SwitchLabelSyntax
                        or ConstantPatternSyntax
                        or RelationalPatternSyntax
                        or EnumMemberDeclarationSyntax
                || (a is FieldDeclarationSyntax f && f.Modifiers.Any(SyntaxKind.ConstKeyword))
                || (a is LocalDeclarationStatementSyntax { IsConst: true })
            );

    private static string Squeezed(string text) =>
        string.Concat(text.Where(c => !char.IsWhiteSpace(c)));
}
