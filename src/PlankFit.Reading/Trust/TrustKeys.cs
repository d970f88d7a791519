using PlankFit.Planking.Trust;
using PlankFit.Reading.Keys;

namespace PlankFit.Reading.Trust;

/// <summary>[trust]: how far the table, the frames, the stock and the tape are trusted. "Within" is 19 times in 20.</summary>
public static class TrustKeys
{
    public static readonly LengthKey ReadTo = Mm(
        "read-to",
        "1",
        "The last unit of the table of offsets, to which each of its figures is rounded."
    ) with
    {
        Limits = Limits.NotNegative.UpTo(25.4),
        Beyond = "must be from 0 to {most}",
        Otherwise = "1 mm, or 1/16 in where the job is written in feet or inches",
    };

    public static readonly LengthKey Lofted = Mm(
        "lofted-within",
        "0",
        "No point is lofted further from the table than this, either way."
    ) with
    {
        DefaultMm = TrustSpec.Default.LoftedWithinMm,
    };

    public static readonly LengthKey FramesMade = Mm(
        "frames-made-within",
        "1.4",
        "How near each point of a frame comes to its place on the frame, 19 times in 20."
    ) with
    {
        DefaultMm = TrustSpec.Default.FramesMadeWithinMm,
    };

    public static readonly LengthKey KeelMade = Mm(
        "keel-made-within",
        "0.8",
        "The same of the keel's edge at each station."
    ) with
    {
        DefaultMm = TrustSpec.Default.KeelMadeWithinMm,
    };

    public static readonly TableKey Stand = new(
        "frames-stand-within",
        "{ athwart = 2, up = 2, along = 3, heel = 2 }",
        "How true each frame stands as a whole, 19 times in 20.",
        TrustWithinKeys.Stand
    );

    public static readonly TableKey Bends = new(
        "bends-within",
        "{ chine = 2, keel = 2, keel-up = 3, over = 0.2 }",
        "How far lines of the hull swell or hollow smoothly over several frames, 19 times in 20.",
        TrustWithinKeys.Bends
    );

    public static readonly TableKey Stock = new(
        "stock-within",
        "{ width = 0.2, thickness = 0.3 }",
        "How far all stock together is off the size that the job says, 19 times in 20.",
        TrustWithinKeys.Stock
    );

    public static readonly LengthKey Tape = Mm(
        "tape-within",
        "1.4",
        "How near one reading of a tape comes, 19 times in 20."
    ) with
    {
        Limits = Limits.Positive.UpTo(TrustWithinKeys.MostMm),
        Beyond = "must be more than 0 and at most {most}",
        DefaultMm = TrustSpec.Default.TapeWithinMm,
    };

    public static readonly LengthKey OverString = Tape with
    {
        Name = "string-within",
        Example = "3",
        What = "The same of a half-breadth measured to a string along the middle.",
        DefaultMm = TrustSpec.Default.StringWithinMm,
    };

    public static readonly LengthKey Level = Tape with
    {
        Name = "height-within",
        Example = "4",
        What = "The same of a height.",
        DefaultMm = TrustSpec.Default.LevelWithinMm,
    };

    public static readonly LengthKey SawWhen = Tape with
    {
        Name = "saw-when",
        Example = "2",
        What = "How sure a plank's length is to be before it is sawn, 19 times in 20.",
        DefaultMm = TrustSpec.Default.SawWhenMm,
    };

    public static readonly JobTable Table = new(
        ReadTo,
        Lofted,
        FramesMade,
        KeelMade,
        Stand,
        Bends,
        Stock,
        Tape,
        OverString,
        Level,
        SawWhen
    );

    private static LengthKey Mm(string name, string example, string what) =>
        TrustWithinKeys.Mm(name, example, what);
}
