using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fairness;

/// <summary>A cell of the table that does not lie fair, and what may have happened to it.</summary>
/// <param name="WrittenMm">What the cell holds.</param>
/// <param name="ResidualMm">How far the value stands beyond what its neighbours foretell; positive outboard or above.</param>
/// <param name="ForetoldMm">The value that its neighbours foretell: a hint to check against, never a value to saw to.</param>
/// <param name="Severity">The part of the row's unfairness that would go with this one value, 0 to 1.</param>
/// <param name="Cause">The likeliest slip: "1-3-3 was probably meant (feet and inches exchanged)"; null where none fits.</param>
/// <param name="OrEnd">The end station whose value may be the wrong one instead; null where the run of the line tells.</param>
public sealed record Suspicion(
    OffsetCell Cell,
    double WrittenMm,
    double ResidualMm,
    double ForetoldMm,
    double Severity,
    string? Cause,
    string? OrEnd
)
{
    /// <summary>What the likeliest slip would have had, to be looked up before it is taken; null where none is known.</summary>
    public double? MeantMm { get; init; }

    public string Line => Cell.Line;

    public Measure Measure => Cell.Measure;

    public string Station => Cell.Station;

    public int StationIndex => Cell.StationIndex;

    /// <summary>"station 5, chine half-breadth".</summary>
    public string Where => $"station {Station}, {Line} {OffsetRow.Word(Measure)}";

    /// <summary>"reads 1014, 9.6 mm outside the run of its neighbours: 1004 was probably meant (10 mm misread)", in the table's notation and in that of the job's sheets.</summary>
    public string Message(LengthUnit table, LengthUnit shown) =>
        $"reads {TableText.Of(WrittenMm, table)}, {Stands(shown)}"
        + (Cause is null ? "" : $": {Cause}")
        + (OrEnd is null ? "" : $"; or the end of the line at station {OrEnd} is out");

    /// <summary>"9.6 mm outside the run of its neighbours".</summary>
    public string Stands(LengthUnit unit)
    {
        string side = (Measure, ResidualMm > 0) switch
        {
            (Measure.Height, true) => "above",
            (Measure.Height, false) => "below",
            (Measure.HalfBreadth, true) => "outside",
            _ => "inside",
        };
        return $"{Amount(Math.Abs(ResidualMm), unit)} {side} the run of its neighbours";
    }

    /// <summary>The same with what to do; what the job has as written is taken so.</summary>
    public Finding ToFinding(LengthUnit table, LengthUnit shown, AsWritten? asWritten = null)
    {
        string message = Message(table, shown);
        string stop = message.EndsWith('?') ? "" : ".";
        return AsWritten.Judged(
            asWritten,
            Cell.Key,
            Math.Abs(ResidualMm),
            new(Findings.Severity.Warning, Where, $"{message}{stop} {WhatToDo}")
            {
                Rank = Rank.DoNotSaw,
            },
            $"its neighbours expect about {TableText.Of(ForetoldMm, table)}"
        );
    }

    private string WhatToDo =>
        OrEnd is null
            ? "Look at the source, or measure; change the table only to what these bear out"
            : "Look at both in the source, and measure them; change the table only to what these bear out";

    private static string Amount(double mm, LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? NumberText.Trimmed(mm, 1) + " mm" : LengthText.Fine(mm, unit);
}
