using System.Collections.Immutable;
using PlankFit.Export.Sheets;
using PlankFit.Planking.Structure;
using PlankFit.Planking.Structure.Laminates;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Structure;

/// <summary>Plain strips of the boards, to be bent before anything is glued: along the grain, and at the angle at which planks lie.</summary>
internal static class BoardStrips
{
    /// <summary>It is bent by so much of its span: what can be read, and nowhere near breaking. A proposal, no source.</summary>
    private const double PartOfSpan = 0.01;

    public static ListSheet Of(Job job, CouponSpec coupon, StationStiffness at)
    {
        LengthUnit unit = job.Units;
        // As a rule reads it, and the loads are those that go with just that.
        double down = Math.Max(
            LengthText.PaperStepMm(unit),
            LengthText.OnPaperMm(PartOfSpan * coupon.SpanMm, unit)
        );
        return new(
            StructureSheets.Block(
                "Stiffness: plain strips of the boards",
                $"at station {at.Station}, which has the least deadrise"
            ),
            [
                StructureWords.Never,
                $"Saw a strip {LengthText.ForPaper(coupon.WidthMm, unit)} wide along the grain of a board as thick as the layer, and one at the angle below to it; lay each on two rests {LengthText.ForPaper(coupon.SpanMm, unit)} apart and hang from its middle what brings it down by {LengthText.ForPaper(down, unit)}. Stand clear of it.",
                "Along the grain the load is to the one below as the board is to the figure that the plan goes by. At the angle it goes by the shear of the wood as well: by its own axes with shear as a part of stiffness that is usual for such wood; Hankinson's rule knows no shear and gives less. Where the strip says something else than the first, give wood-shear of [structure] by it.",
            ],
            [
                new("layer", 40, false),
                new("grain to the strip, degrees", 18),
                new($"stiffness along the grain, {StructureWords.ModulusUnit(unit)}", 22),
                new("stiffness along the strip, by its axes", 20),
                new("stiffness along it, by Hankinson", 20),
                new("load, grain along", 22),
                new("load at the angle, by its axes", 22),
                new("load at the angle, by Hankinson", 22),
            ],
            [
                .. at.Boards.Select(b =>
                    ImmutableArray.Create(
                        b.Layer,
                        NumberText.Padded(Math.Abs(Math.IEEERemainder(b.Ply.Degrees, 180)), 1),
                        StructureWords.Modulus(b.AlongMPa, unit),
                        StructureWords.Modulus(b.ByAxesMPa, unit),
                        StructureWords.Modulus(b.ByHankinsonMPa, unit),
                        Load(b.AlongMPa, b),
                        Load(b.ByAxesMPa, b),
                        Load(b.ByHankinsonMPa, b)
                    )
                ),
            ]
        );

        string Load(double modulus, BoardStrip board) =>
            StructureWords.Hung(
                Deflections.StripNewtons(
                    modulus,
                    board.Ply.ThicknessMm,
                    coupon.WidthMm,
                    coupon.SpanMm,
                    down
                ),
                unit
            );
    }
}
