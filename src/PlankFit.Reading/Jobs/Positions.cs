using System.Collections.Immutable;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Sheathing;
using PlankFit.Reading.Drafts;

namespace PlankFit.Reading.Jobs;

/// <summary>
/// The job's own positions (a master's, a zone's) are in the sense of its table. Where that grows forward they are turned with it: x = from - position.
/// </summary>
internal static class Positions
{
    public static ImmutableArray<LayerSpec> Turned(ImmutableArray<LayerSpec> layers, double from) =>
        [
            .. layers.Select(l =>
                l switch
                {
                    PlankLayerSpec { MasterMm: { } x } p => p with { MasterMm = from - x },
                    ClothLayerSpec { Lap: { } lap } c => c with
                    {
                        Lap = lap with { FromMm = from - lap.ToMm, ToMm = from - lap.FromMm },
                    },
                    _ => l,
                }
            ),
        ];

    public static JobParts Turned(JobParts parts, double from) =>
        parts with
        {
            Keel = parts.Keel with
            {
                Layers = [.. parts.Keel.Layers.Select(k => k with { FromMm = from - k.FromMm })],
            },
            SettingUp = parts.SettingUp is { } s
                ? s with
                {
                    Frames = [.. s.Frames.Select(f => f with { XMm = from - f.XMm })],
                    Topside = s.Topside is { } t
                        ? t with
                        {
                            MitreForwardOfMm = from - t.MitreForwardOfMm,
                        }
                        : null,
                }
                : null,
            Behind =
            [
                .. parts.Behind.Select(b =>
                    b with
                    {
                        Line = Turned(b.Line, from),
                        FromMm = from - b.ToMm,
                        ToMm = from - b.FromMm,
                    }
                ),
            ],
            Sheathing =
            [
                .. parts.Sheathing.Select(s =>
                    s.Keel is ClothAtKeel.PastCentreLine past
                        ? s with
                        {
                            Keel = past with
                            {
                                FromMm = from - past.ToMm,
                                ToMm = from - past.FromMm,
                            },
                        }
                        : s
                ),
            ],
        };

    private static FramingLine Turned(FramingLine line, double from) =>
        line switch
        {
            FramingLine.AtPosition at => new FramingLine.AtPosition(from - at.XMm),
            FramingLine.Spot spot => spot with { Across = Turned(spot.Across, from) },
            _ => line,
        };

    public static EndRules Turned(EndRules ends, double from) =>
        ends with
        {
            Zones =
            [
                .. ends.Zones.Select(z =>
                    z with
                    {
                        FromMm = from - z.ToMm,
                        ToMm = from - z.FromMm,
                    }
                ),
            ],
        };
}
