using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;

namespace PlankFit.Planking.Glue;

/// <summary>What a filler goes into.</summary>
public enum FillerInto
{
    Glue,
    Fillets,
    Fairing,
    All,
}

/// <summary>What a mix is thickened with.</summary>
/// <param name="Name">How the builder calls it.</param>
/// <param name="GramsPerKg">To a kg of resin and hardener, as much as it takes.</param>
public sealed record FillerSpec(string Name, FillerInto Into, Estimate GramsPerKg)
{
    /// <summary>Of its grains, not of the bag, by which its own volume is taken off the mix; null where that is not known, and then none is.</summary>
    public double? KgPerLitre { get; init; }

    /// <summary>Null where no price is given.</summary>
    public double? PricePerKg { get; init; }

    public bool GoesInto(GlueUse use) =>
        use switch
        {
            GlueUse.BetweenLayers or GlueUse.Seams or GlueUse.Behind => Into
                is FillerInto.Glue
                    or FillerInto.All,
            GlueUse.Fillet => Into is FillerInto.Fillets or FillerInto.All,
            GlueUse.Fairing => Into is FillerInto.Fairing or FillerInto.All,
            _ => false,
        };

    /// <summary>To so much mix, kg: the least filler to the least mix.</summary>
    public Estimate To(Estimate mixKg) =>
        new(
            mixKg.Least * GramsPerKg.Least / 1000,
            mixKg.Usual * GramsPerKg.Usual / 1000,
            mixKg.Most * GramsPerKg.Most / 1000
        );
}

/// <summary>How much of a filler goes into one line of the list.</summary>
public sealed record FillerAmount(FillerSpec Of, Estimate Kg);

/// <summary>All of one filler, whatever it goes into.</summary>
/// <param name="Bounds">It cannot be more and cannot be less.</param>
/// <param name="Likely">Where each rate is out by itself.</param>
public sealed record FillerTotal(string Name, Estimate Bounds, Estimate Likely)
{
    /// <summary>As the job has it, one for each of its rates.</summary>
    public ImmutableArray<FillerSpec> Rates { get; init; } = [];

    public double? PricePerKg => Rates.Select(r => r.PricePerKg).FirstOrDefault(p => p is not null);

    public static ImmutableArray<FillerTotal> Of(IEnumerable<AmountLine> lines) =>
        [
            .. lines
                .SelectMany(l => l.Fillers.Select(f => (l.Use, f.Of, f.Kg)))
                .GroupBy(f => f.Of.Name)
                .Select(g => new FillerTotal(
                    g.Key,
                    Estimate.Bounds(g.Select(f => f.Kg)),
                    Estimate.Likely(
                        g.GroupBy(f => f.Use).Select(u => Estimate.Bounds(u.Select(f => f.Kg)))
                    )
                )
                {
                    Rates = [.. g.Select(f => f.Of).Distinct()],
                }),
        ];
}
