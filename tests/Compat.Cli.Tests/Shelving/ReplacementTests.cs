using Compat.Curation;
using Compat.Planning;

namespace Compat.Cli.Tests.Shelving;

public sealed class ReplacementTests
{
    [Fact]
    public void Replacement_WhatOneLosesTheOtherWayRoundGains()
    {
        var kb = SiteFile.LayOver(KnowledgeBase.Shipped, Repository.Demo).KnowledgeBase!;
        var shelf = Shelf.Of(kb);
        var there = Replacement.Of(kb, shelf, new ProductId("plain-quat-wipe"), new ProductId("peroxide-wipe"));
        var back = Replacement.Of(kb, shelf, new ProductId("peroxide-wipe"), new ProductId("plain-quat-wipe"));
        Assert.NotEmpty(there.Lost);
        Assert.Equal(there.Lost.Select(cell => (cell.Device, cell.Part)), back.Gained.Select(cell => (cell.Device, cell.Part)));
        Assert.Throws<ArgumentException>(() => Replacement.Of(kb, shelf, new ProductId("plain-quat-wipe"), new ProductId("nothing")));
    }
}
