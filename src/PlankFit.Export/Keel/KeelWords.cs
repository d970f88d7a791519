using System.Globalization;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Jobs;
using PlankFit.Planking.KeelCheck;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Keel;

/// <summary>The keel in the words of the bench.</summary>
public static class KeelWords
{
    /// <summary>Both sides are spoken of as one where they differ by less than this: no rule shows it, mm and degrees.</summary>
    private const double Same = 0.02;

    /// <summary>Half-width of the layer's inner face, which is wider or narrower than its outer face where its side leans.</summary>
    public static double InnerHalfWidth(KeelLayerPlan layer, KeelStation row) =>
        row.HalfWidthMm
        - (Math.Tan(row.Angles.BevelDegrees * Math.PI / 180) * layer.Spec.ThicknessMm);

    /// <summary>To a tenth of a millimetre or 1/32 in: what is judged against half a millimetre cannot be told to half a millimetre.</summary>
    public static string Fine(double mm, LengthUnit unit) => LengthText.Fine(mm, unit);

    /// <summary>Along the keel, as a tape shows it.</summary>
    public static string Length(double mm, LengthUnit unit) => LengthText.PaperNumber(mm, unit);

    /// <summary>To half a degree, as a saw is set: 12.5.</summary>
    public static string Degrees(double degrees) =>
        (Halves(degrees) + 0.0).ToString("0.0", CultureInfo.InvariantCulture);

    /// <summary>The same with its sign: +12.5, -3.0, 0.0.</summary>
    public static string Signed(double degrees) =>
        Halves(degrees) > 0 ? "+" + Degrees(degrees) : Degrees(degrees);

    /// <summary>0.4 mm proud; 0.3 mm shy; flush.</summary>
    public static string Proud(KeelStation row, LengthUnit unit)
    {
        string fine = Fine(Math.Abs(row.ProudMm), unit);
        return fine == Fine(0, unit) ? "flush" : $"{fine} {(row.ProudMm > 0 ? "proud" : "shy")}";
    }

    /// <summary>How many times what the layer gains in thickness the half-width loses: 1 / tan b. What the planks gain moves it the other way by 1 / sin b.</summary>
    public static string TimesThickness(KeelStation row) =>
        row.Angles.DeadriseDegrees < 0.5
            ? "-"
            : (1 / Math.Tan(row.Angles.DeadriseDegrees * Math.PI / 180)).ToString(
                "0.0",
                CultureInfo.InvariantCulture
            );

    /// <summary>Stations at which a layer is out; where some were measured only they are judged.</summary>
    public static int OffAt(KeelSpec spec, KeelLayerPlan layer) =>
        layer.Stations.Count(row =>
            !(row.PositionMm < layer.RunsOutAtMm)
            && (row.Measured || layer.On(row.Side).All(r => !r.Measured))
            && IsOff(spec, row)
        );

    public static bool IsOff(KeelSpec spec, KeelStation row) =>
        Math.Abs(row.TakeOffSideMm) > spec.HalfWidthToleranceMm
        || Math.Abs(row.ProudMm) > spec.ProudToleranceMm;

    /// <summary>What is to be done at a station before planks are fitted.</summary>
    public static string ToDo(Job job, KeelLayerPlan layer, KeelStation row)
    {
        string Mm(double mm) => Fine(Math.Abs(mm), job.Units);
        return row.PositionMm < layer.RunsOutAtMm ? "has run out here: planks are left long"
            : !IsOff(job.Keel, row) ? "nothing: within tolerance"
            : !row.Measured && layer.On(row.Side).Any(r => r.Measured)
                ? $"not measured; by its neighbours {Mm(row.TakeOffSideMm)} too {(row.TakeOffSideMm > 0 ? "wide" : "narrow")}: measure it"
            : row.TakeOffSideMm > 0
                ? $"plane {Mm(row.TakeOffSideMm)} off the side, or {Mm(row.ProudMm)} off the face at its edge"
            : $"{Mm(row.TakeOffSideMm)} too narrow: glue on and plane back, or plane the planks' ends down {Mm(row.ProudMm)}";
    }

    /// <summary>Rows of a layer for a table: one for both sides where they are alike.</summary>
    public static IEnumerable<(KeelStation Row, string Side)> BySide(KeelLayerPlan layer)
    {
        KeelStation[] starboard = [.. layer.On(Side.Starboard)],
            port = [.. layer.On(Side.Port)];
        if (
            starboard.Length == port.Length
            && starboard.Zip(port).All(pair => Alike(pair.First, pair.Second))
        )
        {
            return starboard.Select(r => (r, "both"));
        }

        return layer.Stations.Select(r => (r, PlankWords.Of(r.Side)));
    }

    private static bool Alike(KeelStation a, KeelStation b) =>
        a.Station == b.Station
        && a.Measured == b.Measured
        && Math.Abs(a.HalfWidthMm - b.HalfWidthMm) < Same
        && Math.Abs(a.WantedHalfWidthMm - b.WantedHalfWidthMm) < Same
        && Math.Abs(a.Angles.DeadriseDegrees - b.Angles.DeadriseDegrees) < Same
        && Math.Abs(a.Angles.PlankEndBevelDegrees - b.Angles.PlankEndBevelDegrees) < Same;

    private static double Halves(double degrees) =>
        Math.Round(2 * degrees, MidpointRounding.AwayFromZero) / 2;
}
