using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Planking.Glue;

/// <summary>What a mix is for.</summary>
public enum GlueUse
{
    Priming,
    WettingOut,
    BetweenLayers,
    Seams,
    Behind,
    Weave,
    Fillet,
    Fairing,

    /// <summary>What is mixed and not put on, since less cannot be measured.</summary>
    LeftOver,
}

/// <summary>One line of the reckoning of resin.</summary>
/// <param name="Where">The layer, or what the fillet runs along.</param>
/// <param name="AreaMm2">Of both sides; the faces of seams, or what lies behind; 0 for fillets.</param>
/// <param name="Kg">Of mix, put on and wasted.</param>
/// <param name="Rate">How it is reckoned, and where the rate comes from.</param>
public sealed record AmountLine(
    string Where,
    GlueUse Use,
    Mix Mix,
    double AreaMm2,
    Estimate Kg,
    string Rate
)
{
    /// <summary>What it is thickened with; none where the job names nothing for it.</summary>
    public ImmutableArray<FillerAmount> Fillers { get; init; } = [];
}

/// <summary>All lines of one mix.</summary>
/// <param name="Bounds">It cannot be more and cannot be less.</param>
/// <param name="Likely">Where each rate is out by itself.</param>
public sealed record MixTotal(Mix Mix, Estimate Bounds, Estimate Likely)
{
    /// <summary>To be ordered, the upper likely, in its two parts.</summary>
    public MixParts Order => Mix.Ratio.Parts(Likely.Most);

    public static ImmutableArray<MixTotal> Of(IEnumerable<AmountLine> lines) =>
        [
            .. lines
                .GroupBy(l => l.Mix.Name)
                .Select(g => new MixTotal(
                    g.First().Mix,
                    Estimate.Bounds(g.Select(l => l.Kg)),
                    // Of one use the rate is the same wherever it is put: its ends go together.
                    Estimate.Likely(
                        g.GroupBy(l => l.Use).Select(u => Estimate.Bounds(u.Select(l => l.Kg)))
                    )
                )),
        ];
}
