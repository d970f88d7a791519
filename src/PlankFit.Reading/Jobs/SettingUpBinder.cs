using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Reading;

/// <summary>[setting-up]: frames, the corner at the chine, and what lies between skin and frame.</summary>
internal static class SettingUpBinder
{
    /// <summary>Common practice, no source.</summary>
    private const double DefaultRadiusMm = 8;

    public static SettingUpSpec? Bind(TableReader? table, LengthUnit units)
    {
        if (table is null)
        {
            return null;
        }

        double frame = Positive(table, "frame-thickness", units, required: true) ?? 1;
        FrameFace face =
            table.Choice(
                "frame-face",
                [("forward", FrameFace.Forward), ("after", FrameFace.After)],
                required: false
            ) ?? FrameFace.After;
        double ribband = table.Length("ribband", units) ?? 0;
        if (ribband < 0)
        {
            table.Wrong("ribband", "must not be negative");
        }

        double radius = Positive(table, "radius", units) ?? DefaultRadiusMm;
        double? piece = Positive(table, "chine-piece", units);
        var frames = ImmutableArray.CreateBuilder<double>();
        foreach (TableReader at in table.Tables("frame", "setting-up.frame"))
        {
            if (at.Length("position", units, required: true) is { } x)
            {
                frames.Add(x);
            }

            at.Close();
        }

        TopsideSpec? topside = Topside(table.Table("topside", "[setting-up] topside"), units);
        table.Close();
        return new(frame, face, ribband, radius)
        {
            FramesAtMm = frames.ToImmutable(),
            Topside = topside,
            ChinePieceMm = piece,
        };
    }

    private static TopsideSpec? Topside(TableReader? topside, LengthUnit units)
    {
        if (topside is null)
        {
            return null;
        }

        double thickness = Positive(topside, "thickness", units, required: true) ?? 1;
        ChineLap lap =
            topside.Choice(
                "laps",
                [
                    ("bottom over topside", ChineLap.BottomLapsTopside),
                    ("topside over bottom", ChineLap.TopsideLapsBottom),
                    ("mitre", ChineLap.Mitre),
                ],
                required: false
            ) ?? ChineLap.BottomLapsTopside;
        string? sheer = topside.Text("line");
        const string slopes =
            "accepted: degrees from level, more than 0 and less than 180; 90 is upright";
        double? slope = topside.Number("slope", slopes);
        if (slope is <= 0 or >= 180)
        {
            topside.Wrong("slope", slopes);
        }

        if ((sheer is null) == (slope is null))
        {
            topside.Faults.Missing(
                topside.At,
                $"{topside.Name}: give either line, a line of the offsets that the topside runs to, or slope, in degrees from level"
            );
        }

        topside.Close();
        return sheer is null && slope is null ? null : new(thickness, lap, sheer, slope);
    }

    private static double? Positive(
        TableReader table,
        string key,
        LengthUnit units,
        bool required = false
    )
    {
        double? mm = table.Length(key, units, required);
        if (mm <= 0)
        {
            table.Wrong(key, "must be greater than 0");
        }

        return mm;
    }
}
