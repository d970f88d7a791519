using System.Security.Cryptography;
using System.Text;
using CsCheck;
using PlankFit.Hashing;

namespace PlankFit.Tests.Hashing;

public sealed class Sha256HashTests
{
    /// <summary>Examples that NIST publishes with FIPS 180-4 for SHA-256, and its empty message.</summary>
    [Theory]
    [InlineData("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData(
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"
    )]
    [InlineData(
        "abcdefghbcdefghicdefghijdefghijkefghijklfghijklmghijklmnhijklmnoijklmnopjklmnopqklmnopqrlmnopqrsmnopqrstnopqrstu",
        "cf5b16a778af8380036ce59e7b0492370b249b11e8f07a51afac45037afee9d1"
    )]
    public void PublishedMessages(string message, string hash) =>
        Assert.Equal(hash, Sha256Hash.HexOf(Encoding.ASCII.GetBytes(message)));

    /// <summary>The long example of the same: a million times the letter a.</summary>
    [Fact]
    public void AMillionLetters() =>
        Assert.Equal(
            "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
            Sha256Hash.HexOf(Encoding.ASCII.GetBytes(new string('a', 1_000_000)))
        );

    /// <summary>Every length over three blocks, where the padding goes over from one block into the next, against the system's own.</summary>
    [Fact]
    public void EveryLengthOverThreeBlocks()
    {
        byte[] bytes = [.. Enumerable.Range(0, 200).Select(i => (byte)(i * 37 + 11))];
        for (int length = 0; length <= bytes.Length; length++)
        {
            Assert.Equal(
                SHA256.HashData(bytes.AsSpan(0, length)),
                Sha256Hash.Of(bytes.AsSpan(0, length))
            );
        }
    }

    [Fact]
    public void PiecesAndStreamsGiveWhatTheWholeGives() =>
        Gen
            .Byte.Array[0, 300]
            .Array[0, 8]
            .Sample(
                pieces =>
                {
                    byte[] whole = [.. pieces.SelectMany(p => p)];
                    byte[] hash = SHA256.HashData(whole);
                    var ours = new Sha256Hash();
                    foreach (byte[] piece in pieces)
                    {
                        ours.Append(piece);
                    }

                    Assert.Equal(hash, ours.Finish());
                    using var stream = new MemoryStream(whole);
                    Assert.Equal(hash, Sha256Hash.Of(stream));
                },
                iter: 300
            );

    [Fact]
    public void AStreamLongerThanItsBuffer()
    {
        byte[] bytes = new byte[200_001];
        new Random(3).NextBytes(bytes);
        using var stream = new MemoryStream(bytes);
        Assert.Equal(SHA256.HashData(bytes), Sha256Hash.Of(stream));
    }
}
