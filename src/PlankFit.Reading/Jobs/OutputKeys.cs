using PlankFit.Planking.Whole;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Jobs;

/// <summary>[output]: what the files are to be like.</summary>
public static class OutputKeys
{
    public static readonly ChoiceKey<DxfAsked> Dxf = new(
        "dxf",
        [("R2000", DxfAsked.R2000), ("R12", DxfAsked.R12), ("both", DxfAsked.Both)],
        "The version of the DXF files: R12 for old controls. Where both are asked for, those of R12 lie in dxf/r12/."
    )
    {
        DefaultChoice = OutputSpec.Default.Dxf,
    };

    public static readonly ChoiceKey<DxfUnits> DxfUnit = new(
        "dxf-units",
        [("mm", DxfUnits.Millimetres), ("in", DxfUnits.Inches)],
        "The unit of the DXF files."
    )
    {
        DefaultChoice = OutputSpec.Default.DxfUnits,
    };

    public static readonly ChoiceKey<PaperSize> Paper = new(
        "paper",
        [("A4", PaperSize.A4), ("A3", PaperSize.A3), ("Letter", PaperSize.Letter)],
        "The paper that sheets, and patterns cut up into pages, are printed on."
    )
    {
        DefaultChoice = OutputSpec.Default.Paper,
    };

    public static readonly ChoiceKey<bool> Lengths = new(
        "lengths",
        [("feet and inches", false), ("inches", true)],
        "How a job in feet or inches shows lengths on sheets, lists and screen: 4'-11 5/16\", or inches alone, 59 5/16\"; a job in millimetres shows those."
    )
    {
        DefaultChoice = OutputSpec.Default.InchesAlone,
    };

    public static readonly ChoiceKey<bool> Sides = new(
        "sides",
        [("pairs", false), ("all", true)],
        "Where port is the mirror image of starboard one card, one row of the list and one pattern serve both planks, with the port plank mirrored beside; or all of them are drawn."
    )
    {
        DefaultChoice = OutputSpec.Default.BothSides,
    };

    public static readonly ChoiceKey<PatternPages> Patterns = new(
        "patterns",
        [("long", PatternPages.Long), ("tiled", PatternPages.Tiled)],
        "Patterns in true size: each on one long page for a roll, or cut up into pages of the paper."
    )
    {
        DefaultChoice = OutputSpec.Default.Patterns,
    };

    public static readonly ChoiceKey<bool> Cards = new(
        "cards",
        [("pdf", false), ("pdf-svg-png", true)],
        "Each plank's card as a picture of its own as well, for a phone."
    )
    {
        DefaultChoice = OutputSpec.Default.CardPictures,
    };

    public static readonly ChoiceKey<bool> Sheets = new(
        "sheets",
        [("book", false), ("book-and-single", true)],
        "The sheets bound in the bench book alone, or each of its sections as a PDF of its own in sheets/ as well."
    )
    {
        DefaultChoice = OutputSpec.Default.SingleSheets,
    };

    public static readonly ChoiceKey<bool> Drawings = new(
        "drawings",
        [("svg", false), ("svg-png", true)],
        "The drawings as SVG, or as PNG too, for a phone."
    )
    {
        DefaultChoice = OutputSpec.Default.DrawingsAsPng,
    };

    public static readonly ChoiceKey<bool> Shape = new(
        "shape",
        [("none", false), ("glb", true)],
        "All planks and the keel's layers as bodies in one file, shape.glb (glTF 2.0, metres, y up), for a program that shows or measures shapes."
    )
    {
        DefaultChoice = OutputSpec.Default.ShapeAsGlb,
    };

    public static readonly JobTable Table = new(
        Dxf,
        DxfUnit,
        Paper,
        Lengths,
        Sides,
        Patterns,
        Cards,
        Sheets,
        Drawings,
        Shape
    );
}
