using System.Collections.Immutable;
using PlankFit.Planking.Fastenings;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Fastenings;

/// <summary>What keys of fastenings and those of pull-down points have in common.</summary>
internal static class FasteningKeyKinds
{
    // Finer than this no hull is fastened, and a short spacing would take for ever to set: our own bound, mm.
    private const double LeastSpacingMm = 10;

    public static readonly ImmutableArray<(string, FasteningKind)> PullDown =
    [
        ("screw and pad", FasteningKind.ScrewAndPad),
        ("staple through strap", FasteningKind.StapleThroughStrap),
    ];

    public static LengthKey Spaced(string name, string example, string what) =>
        new(name, example, what)
        {
            Limits = Limits.AtLeast(LeastSpacingMm),
            Beyond = "must be at least {least}",
            Source = "the least is our own bound",
        };

    public static LengthKey Clear(
        string name,
        string example,
        string what,
        string? otherwise = null
    ) =>
        new(name, example, what)
        {
            Limits = Limits.NotNegative,
            Beyond = "must not be negative",
            Otherwise = otherwise,
            Source = KeySources.Proposal,
        };
}
