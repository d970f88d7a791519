using System.Collections.Immutable;

namespace PlankFit.Mutants;

/// <summary>One fault to be planted: an expression of the sources, and what stands there instead.</summary>
/// <param name="Id">Its place in the list, from 1: by this number it is switched on.</param>
/// <param name="ListLine">Where it stands in the list, for messages.</param>
/// <param name="File">From the checkout's top, with slashes.</param>
/// <param name="Before">Source text before the expression, enough to find it by; blanks and line ends count for nothing.</param>
/// <param name="Tests">Class, or Class.Method, of the tests that judge it, the likeliest first.</param>
/// <param name="Equal">Why it changes nothing that anyone can see; null where it does. Such a one is neither planted nor counted.</param>
/// <param name="Lives">Why no test sees it; null where one should.</param>
/// <param name="Endless">Whether it never ends, so that running out of time is how it is found out.</param>
internal sealed record Mutant(
    int Id,
    int ListLine,
    string Area,
    string File,
    string Before,
    string Was,
    string After,
    string Now,
    ImmutableArray<string> Tests,
    string? Equal,
    string? Lives,
    bool Endless
)
{
    public override string ToString() => $"{Area} {Id}, {Path.GetFileName(File)}: {Was} -> {Now}";
}

/// <summary>A part of the sources whose mutants have a score of their own.</summary>
/// <param name="Tests">All that judge a mutant which its own tests leave alive and nobody has explained.</param>
internal sealed record Area(string Name, ImmutableArray<string> Tests);
