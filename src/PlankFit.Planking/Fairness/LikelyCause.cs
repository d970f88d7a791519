using System.Globalization;

namespace PlankFit.Planking;

/// <summary>
/// Guesses the slip behind a value that does not lie fair. What leaves a plain trace is asked about first (a sign, a value copied from another row or
/// column); else whatever slip puts the value nearest to where it should lie, if it comes near enough. The list of slips is this project's own.
/// </summary>
public static class LikelyCause
{
    /// <summary>How near a slip has to put the value to what the neighbours foretell, mm.</summary>
    private const double NearMm = 1;

    /// <summary>What reading a rule leaves in doubt, mm: half a sixteenth of an inch.</summary>
    private const double ReadingMm = 0.8;

    /// <summary>Two values are copies of each other within this, mm: a quarter of a millimetre is finer than any table.</summary>
    private const double CopyMm = 0.25;

    /// <summary>Slips that come nearer by less than this fit equally well, mm, and the first in the list is asked about.</summary>
    private const double TieMm = 0.05;

    /// <summary>The question to ask about the cell, or null where no known slip fits.</summary>
    public static string? Of(OffsetTable table, OffsetRow row, Misreading found, LengthUnit unit)
    {
        double value = row.ValuesMm[found.Index];
        double foretold = value - found.Residual;

        // A large slip is known by its size even where the foretold value is a little in doubt.
        double near = Math.Max(NearMm, ReadingMm * found.Spread);
        if (Math.Abs(-value - foretold) <= near && Math.Abs(value) > near)
        {
            return "wrong sign?";
        }

        return CopiedFrom(table, row, found.Index) ?? NearestSlip(value, foretold, near, unit);
    }

    private static string? CopiedFrom(OffsetTable table, OffsetRow row, int index)
    {
        int station = row.Stations[index];
        double value = row.ValuesMm[index];
        foreach (OffsetLine line in table.Lines)
        {
            foreach (Measure measure in new[] { Measure.Height, Measure.HalfBreadth })
            {
                bool self = line.Name == row.Line && measure == row.Measure;
                if (
                    !self
                    && OffsetRow.Cells(line, measure)[station] is { } other
                    && Math.Abs(other - value) <= CopyMm
                )
                {
                    return $"the same as the {line.Name} {OffsetRow.Word(measure)}: wrong row?";
                }
            }
        }

        foreach (int beside in new[] { index - 1, index + 1 })
        {
            if (
                beside >= 0
                && beside < row.ValuesMm.Length
                && Math.Abs(row.ValuesMm[beside] - value) <= CopyMm
            )
            {
                return $"the same as at station {table.Stations[row.Stations[beside]].Name}: wrong column?";
            }
        }

        return null;
    }

    private static string? NearestSlip(double value, double foretold, double near, LengthUnit unit)
    {
        string? best = null;
        double bestMiss = double.PositiveInfinity;
        foreach ((double mm, string text, double within) in Slips(value, near, unit))
        {
            double miss = Math.Abs(mm - foretold);
            if (miss <= within && miss < bestMiss - TieMm)
            {
                (best, bestMiss) = (text, miss);
            }
        }

        return best;
    }

    private static IEnumerable<(double Mm, string Text, double Within)> Slips(
        double value,
        double near,
        LengthUnit unit
    )
    {
        foreach ((double mm, string text) in SwappedDigits.Of(value, unit))
        {
            yield return (mm, $"digits swapped ({text})?", near);
        }

        foreach ((double size, string text) in Amounts(unit))
        {
            double within = size >= 10 ? near : NearMm;
            yield return (value + size, $"{text} misread?", within);
            yield return (value - size, $"{text} misread?", within);
        }
    }

    private static IEnumerable<(double SizeMm, string Text)> Amounts(LengthUnit unit)
    {
        if (LengthUnits.IsMetric(unit))
        {
            foreach (int mm in new[] { 5, 10, 20, 50, 100, 200, 500, 1000 })
            {
                yield return (mm, mm.ToString(CultureInfo.InvariantCulture) + " mm");
            }

            // A metric table may have been taken off a rule in inches.
            yield return (LengthUnits.MmPerInch, "1 in");
            yield return (LengthUnits.MmPerFoot, "1 ft");
            yield break;
        }

        for (int eighths = 1; eighths <= 8; eighths++)
        {
            double inches = eighths / 8.0;
            yield return (inches * LengthUnits.MmPerInch, FractionText.Mixed(eighths, 8) + " in");
        }

        yield return (LengthUnits.MmPerFoot, "1 ft");
    }
}
