using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>
/// Cloth and its coats that lie under what is on are on, whether anybody wrote them down or not: on both sides, since no skin, coat or fairing begins before what is under it is on on both.
/// </summary>
internal static class ClothUnder
{
    /// <param name="known">Of this bottom alone.</param>
    /// <param name="layers">From the inside out.</param>
    /// <param name="coats">Over the outermost cloth; 0 where none are asked for.</param>
    /// <returns>What is done and what lies under it, each on when the first of what lies over it was, at the latest; and that it is taken so.</returns>
    public static (GlueProgress All, ImmutableArray<Finding> Findings) Of(
        GlueProgress known,
        ImmutableArray<LayerSpec> layers,
        int coats
    )
    {
        int[] skins =
        [
            .. Enumerable.Range(0, layers.Length).Where(i => layers[i] is PlankLayerSpec),
        ];
        // Coats lie over their cloth, fairing over all.
        (int Layer, int Coat) Height(GlueDone row) =>
            row switch
            {
                { Plank: { Panel: PlankId.Bottom } plank }
                    when plank.Layer >= 1 && plank.Layer <= skins.Length => (
                    skins[plank.Layer - 1],
                    0
                ),
                { Cloth: { } cloth } => (
                    Enumerable
                        .Range(0, layers.Length)
                        .Where(i => layers[i] is ClothLayerSpec && layers[i].Name == cloth)
                        .DefaultIfEmpty(-1)
                        .First(),
                    row.Coat
                ),
                { Finish: { } finish }
                    when string.Equals(
                        finish,
                        FairingSpec.Stage,
                        StringComparison.OrdinalIgnoreCase
                    ) => (layers.Length, 0),
                _ => (-1, 0),
            };

        ImmutableArray<GlueDone>.Builder under = ImmutableArray.CreateBuilder<GlueDone>();
        ImmutableArray<Finding>.Builder findings = ImmutableArray.CreateBuilder<Finding>();
        for (int at = 0; at < layers.Length; at++)
        {
            if (layers[at] is not ClothLayerSpec cloth)
            {
                continue;
            }

            int most = at + 1 == layers.Length ? coats : 0;
            for (int coat = 0; coat <= most; coat++)
            {
                GlueDone[] over = [.. known.Rows.Where(r => Height(r).CompareTo((at, coat)) > 0)];
                Side[] sides =
                [
                    .. AmountPlanner.BothSides.Where(s =>
                        known.CoatedAt(cloth.Name, coat, s) is null
                    ),
                ];
                if (over.Length == 0 || sides.Length == 0)
                {
                    continue;
                }

                double by = over.Min(r => r.At);
                under.AddRange(
                    sides.Select(s => new GlueDone(null, cloth.Name, s, by)
                    {
                        Coat = coat,
                        IsTaken = true,
                    })
                );
                findings.Add(Told(known, cloth.Name, coat, sides));
            }
        }

        return (known with { Rows = [.. known.Rows, .. under] }, findings.ToImmutable());
    }

    private static Finding Told(GlueProgress known, string cloth, int coat, Side[] sides)
    {
        string what = coat == 0 ? cloth : $"{cloth} coat {NumberText.Trimmed(coat, 0)}",
            rows = string.Join(
                ", ",
                sides.Select(s => $"{what} {s.ToString().ToLowerInvariant()}")
            );
        return new(
            Severity.Warning,
            known.Source,
            $"what lies over {what} is on, and nothing says when {what} was: it is taken as on by then on both sides, and since its hour is not known nothing is planned on it before it has cured, is washed, keyed and dry. {(known.Source == GlueProgress.UsualSource ? $"Write into {GlueProgress.UsualSource}" : "Mark with their hours, where the planks were marked as glued")}: {rows}"
        )
        {
            Rank = Rank.SawAfter,
        };
    }
}
