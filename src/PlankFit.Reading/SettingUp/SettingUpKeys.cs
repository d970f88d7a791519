using System.Collections.Immutable;
using PlankFit.Planking.SettingUp;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.SettingUp;

/// <summary>[setting-up]: what the bottom is set up on, and the corner at its chine.</summary>
public static class SettingUpKeys
{
    private static readonly SettingUpSpec Usual = new();

    public static readonly PlacesKey Frames = new(
        "frames",
        "[3450, 4400]",
        "Positions of frames and moulds besides those at the stations and under [[behind]]."
    );

    public static readonly LengthKey Ribbands = SettingUpSizes.Of(
        "ribbands",
        "20",
        "How thick what lies between frames and planking is.",
        SettingUpSizes.ThickestMm
    ) with
    {
        Limits = Limits.NotNegative,
        Beyond = "must not be less than {least}",
        DefaultMm = Usual.RibbandMm,
    };

    public static readonly LengthKey Frame = SettingUpSizes.Of(
        "frame-thickness",
        "24",
        "Of moulds and frames, fore and aft: over it their bevel falls.",
        SettingUpSizes.ThickestMm
    ) with
    {
        DefaultMm = Usual.FrameMm,
        Source = KeySources.Practice,
    };

    public static readonly LengthKey Transom = SettingUpSizes.Of(
        "transom-thickness",
        "30",
        "Of the transom, fore and aft.",
        SettingUpSizes.ThickestMm
    ) with
    {
        Otherwise = "as the frames",
    };

    public static readonly ChoiceKey<FrameFace> Face = new(
        "frame-face",
        [
            ("by bevel", FrameFace.ByBevel),
            ("forward", FrameFace.Forward),
            ("after", FrameFace.After),
        ],
        "Which face of a frame stands on its line; by bevel: the one from which the hull narrows, so that wood is planed off and none is wanting."
    )
    {
        DefaultChoice = Usual.Face,
    };

    public static readonly PlacesKey Waterlines = new(
        "waterlines",
        "[150, 300]",
        "Heights of level lines to mark on the full-size sections."
    );

    public static readonly LengthKey ChineLog = SettingUpSizes.Of(
        "chine-log",
        "45",
        "The width of the chine log, for its bevel's fall; only with a topside.",
        SettingUpSizes.WidestMm
    );

    /// <summary>backbone-half-width where it is a length.</summary>
    public static readonly LengthKey BackboneEven = SettingUpSizes.Of(
        "backbone-half-width",
        "70",
        "The same all along.",
        SettingUpSizes.WidestMm
    );

    public static readonly TextKey BackboneLine = new(
        "line",
        "\"hog\"",
        "A half-breadth row of the table of offsets."
    )
    {
        AskedFor = "the name of a half-breadth row of the offsets",
    };

    /// <summary>backbone-half-width where it is a line of the table.</summary>
    public static readonly TableKey BackboneTable = new(
        "backbone-half-width",
        "{ line = \"hog\" }",
        "A line.",
        new(BackboneLine)
    );

    public static readonly EitherKey Backbone = new(
        BackboneEven,
        BackboneTable,
        "The half-width of the timber inside the keel on which planks land: hog, keelson, apron."
    );

    public static readonly TableKey Topside = TableKey.Headed(
        "setting-up.topside",
        "The topside above the chine, for the corner.",
        TopsideKeys.Table
    );

    public static readonly LengthKey ClothRadius = SettingUpSizes.Of(
        "cloth-radius",
        "8",
        "The least radius that cloth lies round; only with a topside.",
        SettingUpSizes.ThickestMm
    ) with
    {
        DefaultMm = Usual.ClothRadiusMm,
        Source = KeySources.Practice,
    };

    public static readonly LengthKey PieceWidth = SettingUpSizes.Of(
        "width",
        "40",
        "From the corner's edge in along the bottom.",
        SettingUpSizes.WidestMm
    ) with
    {
        Required = true,
    };

    public static readonly LengthKey PieceUp = SettingUpSizes.Of(
        "up",
        "30",
        "From the corner's edge up along the topside.",
        SettingUpSizes.WidestMm
    ) with
    {
        Otherwise = "as its width",
    };

    public static readonly TableKey ChinePiece = TableKey.Headed(
        "setting-up.chine-piece",
        "A piece of hard wood that makes the corner; only with a topside.",
        new(PieceWidth, PieceUp)
    );

    public static readonly ImmutableArray<JobKey> OfCorner = [ChineLog, ChinePiece, ClothRadius];

    public static readonly JobTable Table = new(
        Frame,
        Face,
        Ribbands,
        Transom,
        Frames,
        Waterlines,
        Backbone,
        ChineLog,
        ClothRadius,
        ChinePiece,
        Topside
    );
}
