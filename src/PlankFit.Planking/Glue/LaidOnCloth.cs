using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Glue;

/// <summary>
/// Cloth or a coat that is wetted out on cloth: while that still bonds, if all of it can be on in that time, or else once it has cured, is washed, keyed and dry.
/// </summary>
/// <param name="Before">What must be so before the first of it is mixed.</param>
/// <param name="Why">Why no time was found for all of it; null where one was.</param>
internal sealed record LaidOnCloth(
    ImmutableArray<ClothWetting.WettedSide> Sides,
    ImmutableArray<HoldPoint> Before,
    Finding? Why
)
{
    /// <param name="under">On on both sides at a known hour.</param>
    /// <param name="shares">A side each, none of them on, in the order in which they are laid.</param>
    public static LaidOnCloth Of(
        ClothWetting work,
        IReadOnlyList<ClothShare> shares,
        GlueStage under,
        double ready,
        LengthUnit unit
    )
    {
        (double first, double last) = under.OnAt!.Value;
        DayTemperature day = work.Placing.Day;
        if (!under.IsTaken && under.Mix.Clocks.Recoat is { } recoat)
        {
            // Counted from the last course for its beginning, and from the first for its end.
            double from = Math.Ceiling(last + ClockRun.Minutes(recoat.From, null, day, last)),
                to = Math.Floor(first + ClockRun.Minutes(recoat.To, null, day, first));
            ImmutableArray<ClothWetting.WettedSide> soon = OnWood(
                work,
                shares,
                Math.Max(ready, from)
            );
            if (soon.Length == shares.Count && soon[^1].LastAt <= to)
            {
                return new(
                    soon,
                    [
                        new(
                            "what is under it is firm and still bonds: nothing washed, nothing touched with bare hands",
                            from,
                            to
                        ),
                    ],
                    null
                );
            }
        }

        if (
            KeyedCloth.Of(
                under.Mix.Clocks,
                work.Placing,
                work.Days,
                last,
                ready,
                shares.Sum(s => s.AreaMm2)
            )
            is not { } keyed
        )
        {
            return new([], [], WhyNoBatch.OfKeying(work.Layer));
        }

        ImmutableArray<ClothWetting.WettedSide> sides = OnWood(work, shares, keyed.Dry);
        return sides.Length < shares.Count
            ? new(sides, [], WhyNoBatch.OfCloth(work, shares[sides.Length], unit))
            : new(sides, keyed.Points, null);
    }

    /// <summary>One side after the other, with nothing under it that has a clock; as many as were found a time for.</summary>
    public static ImmutableArray<ClothWetting.WettedSide> OnWood(
        ClothWetting work,
        IReadOnlyList<ClothShare> shares,
        double from
    )
    {
        ImmutableArray<ClothWetting.WettedSide>.Builder sides =
            ImmutableArray.CreateBuilder<ClothWetting.WettedSide>();
        foreach (ClothShare share in shares)
        {
            (double, double)[] taken =
            [
                .. sides.Select(s => s.Trim).OfType<TrimSpan>().Select(t => (t.At, t.DoneAt)),
            ];
            if (work.Of(share, from, taken) is not { } side)
            {
                break;
            }

            sides.Add(side);
            from = side.LastAt;
        }

        return sides.ToImmutable();
    }
}
