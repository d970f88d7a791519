using PlankFit.Planking.Units;

namespace PlankFit.Export.Checks;

/// <summary>What a reading says, held against its blank.</summary>
public enum BlankVerdict
{
    /// <summary>The sheet knows no limit for it.</summary>
    NoLimit,
    Within,
    Beyond,

    /// <summary>It was taken to the marks of another lay-out.</summary>
    OfAnotherLayOut,
}

/// <summary>Holds readings against the sheet as whoever has it on paper would: against the figures as paper shows them.</summary>
public static class BlankJudge
{
    /// <summary>By so much what it should say may change before the marks are others, mm: nobody sets a mark nearer. Our own, no source.</summary>
    private const double SameMarksMm = 0.5;

    /// <summary>A figure in inches goes there and back over mm.</summary>
    private const double NoiseMm = 1e-6;

    /// <param name="shouldMm">What it should have said by the sheet that it was read from; null where that is not known.</param>
    public static bool IsOfThisLayOut(CheckBlank blank, double? shouldMm) =>
        !blank.GoesWithTheLayOut
        || shouldMm is not { } then
        || Math.Abs(then - blank.ShouldMm) <= SameMarksMm;

    /// <param name="mm">What was read.</param>
    public static (BlankVerdict Verdict, string Words) Of(
        CheckBlank blank,
        double mm,
        double? shouldMm,
        LengthUnit unit
    )
    {
        if (!IsOfThisLayOut(blank, shouldMm))
        {
            return (
                BlankVerdict.OfAnotherLayOut,
                $"read where it should have said {LengthText.ForPaper(shouldMm!.Value, unit)}: planks are laid otherwise since; tape it again"
            );
        }

        double by = mm - LengthText.OnPaperMm(blank.ShouldMm, unit);
        if (blank.Id.What == BlankId.TenOfTheStock)
        {
            return (
                BlankVerdict.NoLimit,
                $"a tenth of it is {LengthText.Fine(mm / StockCreep.Stacked, unit)}"
            );
        }

        if (blank.LimitMm is not { } limit)
        {
            return (BlankVerdict.NoLimit, Signed(by, unit));
        }

        return by * Math.Sign(by) <= LengthText.OnPaperMm(limit, unit, RoundTo.Up) + NoiseMm
            ? (BlankVerdict.Within, $"{Signed(by, unit)}, within")
            : (
                BlankVerdict.Beyond,
                $"{Signed(by, unit)}, beyond the limit: measure again, then look at that frame"
            );
    }

    /// <summary>As fine as it is judged: + 3.5 mm.</summary>
    private static string Signed(double mm, LengthUnit unit) =>
        $"{(mm < 0 ? "−" : "+")} {LengthText.Fine(Math.Abs(mm), unit)}";
}
